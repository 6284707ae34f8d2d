package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.PlannedCircuit;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.report.BoardUse;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Board settings and landing lists in another language, as a set of its own: nothing in it is left in English by chance. */
public final class SiteBooklet {
    /** Lines of a board, with what is said above them. */
    public record Landing(String name, String head, String set, List<Map<String, String>> rows) {}

    private static final String A4 = "210mm 297mm";

    private final Document document;
    private final SheetWords words;
    private final List<BoardUse> boards;
    private final List<Map<String, String>> settings;

    public SiteBooklet(Document document, SheetWords words) {
        this.document = document;
        this.words = words;
        this.boards = document.tables().settings().rows();
        this.settings = ShownTable.of(document.tables().settings()).byKey();
    }

    public byte[] print() {
        SortedSet<Integer> signs = UsedCharacters.of(document, new ShownTables());
        words.all().values().forEach(text -> text.codePoints().forEach(signs::add));
        return LooseSheets.of(
                document, words.say("booklet.title"), words.language().word(), signs, sheets -> {
                    part("site", Map.of("cautions", words.cautions(), "settings", settings()), sheets);
                    for (List<Landing> some : PrintSections.chunks(landing(), PrintSections.ROWS / 20)) {
                        part("sitelanding", Map.of("boards", some), sheets);
                    }
                });
    }

    private void part(String template, Map<String, Object> values, LooseSheets sheets) throws IOException {
        Map<String, Object> all = new HashMap<>(values);
        all.put("document", document);
        all.put("w", words.all());
        all.put("family", sheets.fonts().family());
        all.put("language", words.language().word());
        all.put("isTranslated", words.language() != SheetLanguage.EN);
        all.put(
                "revision",
                words.say(
                        "stock.revision",
                        document.imprint().revision(),
                        document.imprint().date()));
        all.put("margins", PrintedSet.Margins.of(document.imprint(), words.say("booklet.title")));
        sheets.print(template, all, A4);
    }

    /** A row a board, with figures as the English sheets have them. */
    private List<Map<String, String>> settings() {
        List<Map<String, String>> rows = new ArrayList<>();
        for (int i = 0; i < boards.size(); i++) {
            BoardUse board = boards.get(i);
            Map<String, String> row = new TreeMap<>(settings.get(i));
            row.put("chain", chain(board));
            row.put("idle", idle(board));
            row.put("delay", board.startDelaySeconds().isPresent() ? words.number(row.get("delay")) : "");
            row.put("step", board.stepSeconds().isPresent() ? words.number(row.get("step")) : "");
            row.put("used", words.say("settings.used-of", board.outputsUsed(), board.outputs()));
            rows.add(row);
        }
        return rows;
    }

    private String chain(BoardUse board) {
        List<String> chain = new ArrayList<>();
        for (Optional<BoardUse> at = Optional.of(board);
                at.isPresent() && !chain.contains(at.get().board()); ) {
            chain.add(0, at.get().board());
            at = at.get().after().flatMap(this::board);
        }
        chain.add(0, words.say("settings.start-signal"));
        return chain.stream().map(Cells::text).collect(Collectors.joining(" → "));
    }

    private Optional<BoardUse> board(String id) {
        return boards.stream().filter(each -> each.board().equals(id)).findFirst();
    }

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

    private List<Landing> landing() {
        List<Map<String, String>> cells =
                ShownTable.of(document.tables().landing()).byKey();
        Map<String, Map<Integer, Map<String, String>>> outputs = new HashMap<>();
        for (int i = 0; i < cells.size(); i++) {
            PlannedCircuit lead = document.tables().landing().rows().get(i);
            outputs.computeIfAbsent(lead.board().orElse(""), any -> new TreeMap<>())
                    .put(lead.output().orElse(0), row(lead, cells.get(i)));
        }
        List<Landing> all = new ArrayList<>();
        for (int i = 0; i < boards.size(); i++) {
            BoardUse board = boards.get(i);
            Map<Integer, Map<String, String>> rows = outputs.getOrDefault(board.board(), new TreeMap<>());
            board.freeOutputs().forEach(free -> rows.put(free, Map.of("output", String.valueOf(free), "load", "")));
            all.add(new Landing(
                    words.say("landing.board", Cells.text(board.board())),
                    words.say(
                            "landing.head",
                            Cells.text(board.type()),
                            Cells.text(board.panel()),
                            Cells.text(board.after().orElse(words.say("settings.start-signal"))),
                            board.outputsUsed(),
                            board.outputs()),
                    board.startDelaySeconds().isPresent()
                            ? words.say(
                                    "landing.set",
                                    words.number(settings.get(i).get("delay")),
                                    words.number(settings.get(i).get("step")))
                            : words.say("landing.each-output"),
                    List.copyOf(rows.values())));
        }
        return all;
    }

    private Map<String, String> row(PlannedCircuit lead, Map<String, String> cells) {
        Map<String, String> row = new TreeMap<>(cells);
        row.put("breaker", words.number(lead.breaker()));
        for (String time : List.of("on", "off", "set")) {
            row.put(time, words.number(cells.getOrDefault(time, "")));
        }
        List<String> beside = new ArrayList<>();
        if (lead.byContactor()) {
            beside.add(
                    lead.carries().isEmpty()
                            ? words.say("landing.contactor")
                            : words.say("landing.contactor-with", Cells.text(String.join(", ", lead.carries()))));
        }
        if (lead.offAfterSeconds() > 0) {
            beside.add(words.say("landing.off-after", words.number(cells.get("offAfter"))));
        }
        row.put("beside", String.join("; ", beside));
        return row;
    }
}
