package evenrise.solver.intake;

import evenrise.model.contract.Phrase;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.OffTiming;
import evenrise.model.project.Panel;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** The control boards of a list: of the kinds that the mapping names, else of one that is to be filled in, and asked for. */
final class BoardSketch {
    /** Says in the project what its delays and steps are. */
    static final String TO_BE_FILLED_IN = "TO-BE-FILLED-IN";

    private static final List<Double> STEPS = List.of(0.25, 0.5, 1.0, 2.0);

    /** Begins what is no name of a group. */
    private static final String NO_GROUP = "/";

    /** What shares boards: of one system, a group, else amplifiers, else the others. */
    private record Sharing(String system, String group) {}

    private final Mapping mapping;
    private final Notices notices;

    BoardSketch(Mapping mapping, Notices notices) {
        this.mapping = mapping;
        this.notices = notices;
    }

    /** None where nothing is switched. */
    List<BoardType> types(List<Load> loads) {
        if (loads.stream().noneMatch(Load::switched)) {
            return List.of();
        }
        boolean needsOff = loads.stream().anyMatch(load -> load.offAfterSeconds() > 0);
        if (!mapping.boardTypes().isEmpty()) {
            if (needsOff && mapping.boardTypes().stream().allMatch(type -> type.off() == OffTiming.MIRROR)) {
                ask("which control lets an output go off later than its turn? The list states off delays, and no board"
                        + " type of the mapping has off: each.");
            }
            return mapping.boardTypes();
        }
        List<Double> delays = delays(loads);
        ask(String.format(
                Locale.ROOT,
                "which control boards are there? The list says nothing of them, so board type '%s' stands in: %d"
                        + " outputs, start delays up to %.0f s and steps of 0.25 to 2 s, which are those of no board."
                        + " Fill in the real ones, in the project or as board_types in a mapping (--map), before a"
                        + " time of a plan counts for anything.",
                TO_BE_FILLED_IN,
                mapping.boardOutputs(),
                delays.get(delays.size() - 1)));
        return List.of(BoardType.builder()
                .id(TO_BE_FILLED_IN)
                .outputs(mapping.boardOutputs())
                .startDelaySeconds(delays)
                .stepSeconds(STEPS)
                .price(0)
                .off(needsOff ? OffTiming.EACH : OffTiming.MIRROR)
                .build());
    }

    private void ask(String text) {
        notices.add(new Notice(Notice.Kind.QUESTION, "", text));
    }

    /**
     * A group that fits one board has one of its own, a larger one as many as it needs. What is in no group shares others, with
     * a quarter of their outputs to spare, but for amplifiers: no board reaches from processing to what waits until that has settled.
     */
    List<Board> boards(List<Load> loads, List<Panel> panels) {
        Map<Sharing, Integer> sizes = new LinkedHashMap<>();
        loads.stream()
                .filter(load -> load.switched() && load.comesWith().isEmpty())
                .forEach(load -> sizes.merge(
                        new Sharing(
                                load.system().orElse(""),
                                load.shutdownGroup()
                                        .orElse(
                                                load.role() == Role.AMPLIFIER
                                                        ? NO_GROUP + "amplifiers"
                                                        : NO_GROUP + "others")),
                        1,
                        Integer::sum));
        List<String> all = panels.stream().map(Panel::id).toList();
        List<Board> boards = new ArrayList<>();
        sizes.forEach((sharing, size) -> {
            boolean isGroup = !sharing.group().startsWith(NO_GROUP);
            for (int left = isGroup ? size : (int) Math.ceil(size * (1 + Sketch.SPARE)); left > 0; ) {
                Kind kind = kind(left);
                String panel = all.get(boards.size() % all.size());
                boards.add(Board.builder()
                        .id("B" + (boards.size() + 1))
                        .type(kind.type())
                        .panel(panel)
                        .reaches(all)
                        .system(Optional.of(sharing.system()).filter(system -> !system.isEmpty()))
                        .build());
                left -= kind.outputs();
            }
        });
        if (boards.isEmpty()) {
            return boards;
        }
        if (!mapping.boardTypes().isEmpty()) {
            notices.guess("as many boards as groups need, and a quarter more of what is in none (" + boards.size()
                    + "), of the kinds that the mapping names: to be replaced by the real ones");
        } else {
            notices.guess(
                    Phrase.counted(boards.size(), "board")
                            + ", as many as groups need and a quarter more of what is in none, of the kind that is to be filled in");
        }
        return boards;
    }

    /** @param outputs that may be in use */
    private record Kind(String type, int outputs) {}

    /** The smallest that takes so many loads, else the largest. */
    private Kind kind(int loads) {
        if (mapping.boardTypes().isEmpty()) {
            return new Kind(TO_BE_FILLED_IN, mapping.boardOutputs());
        }
        List<Kind> kinds = mapping.boardTypes().stream()
                .map(type -> new Kind(type.id(), Math.max(1, type.outputs() - type.spareOutputs())))
                .sorted(Comparator.comparingInt(Kind::outputs))
                .toList();
        return kinds.stream()
                .filter(kind -> kind.outputs() >= loads)
                .findFirst()
                .orElse(kinds.get(kinds.size() - 1));
    }

    /** So that amplifiers can begin when the slowest processing has settled, and be spread over a minute after that. */
    private static List<Double> delays(List<Load> loads) {
        double settle = loads.stream().mapToDouble(Load::settleSeconds).max().orElse(0);
        TreeSet<Double> delays = new TreeSet<>(List.of(0.0, 1.0, 2.0, 5.0, 8.0, 10.0, 15.0, 20.0, 30.0, 45.0, 60.0));
        for (double later = 5; settle > 0 && later <= 60; later += 5) {
            delays.add(settle + later);
        }
        return List.copyOf(delays);
    }
}
