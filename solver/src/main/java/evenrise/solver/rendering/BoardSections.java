package evenrise.solver.rendering;

import evenrise.solver.document.DocumentTables;
import evenrise.solver.document.PlannedCircuit;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import evenrise.solver.document.SwitchingWords;
import evenrise.solver.report.BoardUse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What is set on the boards, and where their leads land. */
final class BoardSections {
    /** A board's lines, those of outputs that stay open, too, with what is said above them. */
    public record Landing(
            String board,
            String name,
            String head,
            String set,
            String idle,
            boolean isByOutput,
            List<Map<String, String>> rows) {}

    private final SheetWords words;
    private final SwitchingWords switching;
    private final DocumentTables tables;
    private final ShownTables shown;
    private final boolean hasSystems;
    private final List<BoardUse> boards;
    private final Map<String, BoardUse> byId = new HashMap<>();

    BoardSections(SiteDocument site, ShownTables shown) {
        this.words = site.words();
        this.switching = new SwitchingWords(words);
        this.tables = site.document().tables();
        this.shown = shown;
        this.hasSystems = !site.document().systems().isEmpty();
        this.boards = tables.settings().rows();
        boards.forEach(board -> byId.put(board.board(), board));
    }

    PrintSection settings() {
        List<Map<String, String>> cells = shown.of(tables.settings()).byKey();
        List<Map<String, String>> rows = new ArrayList<>();
        for (int i = 0; i < boards.size(); i++) {
            rows.add(setting(boards.get(i), cells.get(i)));
        }
        return PrintSections.section(
                words.say("settings.title"), "settings", PrintSections.parts(rows), part -> Map.of("rows", part));
    }

    private Map<String, String> setting(BoardUse board, Map<String, String> cells) {
        Map<String, String> row = new TreeMap<>(cells);
        boolean isSet = board.startDelaySeconds().isPresent();
        row.put("chain", chain(board));
        row.put("idle", idle(board));
        row.put("delay", isSet ? words.number(cells.get("delay")) : "");
        row.put("step", isSet ? words.number(cells.get("step")) : "");
        row.put("used", words.say("settings.used-of", board.outputsUsed(), board.outputs()));
        return row;
    }

    private String chain(BoardUse board) {
        List<String> chain = new ArrayList<>();
        for (Optional<BoardUse> at = Optional.of(board);
                at.isPresent() && !chain.contains(at.get().board()); ) {
            chain.add(0, at.get().board());
            at = at.get().after().map(byId::get);
        }
        chain.add(0, words.say("settings.start-signal"));
        return chain.stream().map(Cells::text).collect(Collectors.joining(" → "));
    }

    /** A board without a load may still be needed: for the boards that start after it. */
    private String idle(BoardUse board) {
        if (board.outputsUsed() > 0) {
            return "";
        }
        String next = boards.stream()
                .filter(each -> each.after().filter(board.board()::equals).isPresent())
                .map(each -> Cells.text(each.board()))
                .collect(Collectors.joining(", "));
        return next.isEmpty() ? words.say("settings.idle") : words.say("settings.idle-but", next);
    }

    PrintSection landing() {
        return PrintSections.section(
                words.say("landing.title"),
                "landing",
                PrintBlock.parts(landings(), each -> Math.max(1, each.rows().size()), PrintSections.ROWS),
                part -> Map.of("note", note(), "boards", part));
    }

    private String note() {
        return words.say("landing.note")
                + (hasSystems ? " " + words.say("landing.systems") : "")
                + (tables.landing().rows().stream()
                                .anyMatch(each -> each.setSeconds().isPresent())
                        ? " " + words.say("landing.own-time")
                        : "");
    }

    /** In the order of the outputs, so that nobody wonders what becomes of the next terminal. */
    private List<Landing> landings() {
        List<Map<String, String>> cells = shown.of(tables.landing()).byKey();
        Map<String, Map<Integer, Map<String, String>>> outputs = new HashMap<>();
        for (int i = 0; i < cells.size(); i++) {
            PlannedCircuit lead = tables.landing().rows().get(i);
            outputs.computeIfAbsent(lead.board().orElse(""), any -> new TreeMap<>())
                    .put(lead.output().orElse(0), row(lead, cells.get(i)));
        }
        List<Map<String, String>> settings = shown.of(tables.settings()).byKey();
        List<Landing> all = new ArrayList<>();
        for (int i = 0; i < boards.size(); i++) {
            BoardUse board = boards.get(i);
            Map<Integer, Map<String, String>> rows = outputs.getOrDefault(board.board(), new TreeMap<>());
            board.freeOutputs().forEach(free -> rows.put(free, Map.of("output", String.valueOf(free), "load", "")));
            all.add(landing(board, settings.get(i), List.copyOf(rows.values())));
        }
        return all;
    }

    private Landing landing(BoardUse board, Map<String, String> set, List<Map<String, String>> rows) {
        boolean isByOutput = board.startDelaySeconds().isEmpty();
        return new Landing(
                board.board(),
                words.say("landing.board", Cells.text(board.board())),
                words.say(
                        "landing.head",
                        Cells.text(board.type()),
                        Cells.text(board.panel()),
                        Cells.text(board.after().orElse(words.say("settings.start-signal"))),
                        board.outputsUsed(),
                        board.outputs()),
                isByOutput
                        ? words.say("landing.each-output")
                        : words.say("landing.set", words.number(set.get("delay")), words.number(set.get("step"))),
                idle(board),
                isByOutput,
                rows);
    }

    /** With its breaker as {@code 20/2}, which a spreadsheet would take for a date. */
    private Map<String, String> row(PlannedCircuit lead, Map<String, String> cells) {
        Map<String, String> row = new TreeMap<>(cells);
        row.put("breaker", words.number(lead.breaker()));
        for (String time : List.of("on", "off", "set")) {
            row.put(time, words.number(cells.getOrDefault(time, "")));
        }
        List<String> beside = new ArrayList<>();
        if (!switching.contactor(lead).isEmpty()) {
            beside.add(Cells.text(switching.contactor(lead)));
        }
        if (lead.offAfterSeconds() > 0) {
            beside.add(words.say("landing.off-after", words.number(cells.get("offAfter"))));
        }
        row.put("beside", String.join("; ", beside));
        return row;
    }
}
