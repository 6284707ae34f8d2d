package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Board;
import evenrise.model.project.PlantPart;
import evenrise.model.review.NextLoad;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Where one more load could go, for a screen. */
public final class NextLoadText {
    private static final int ROWS = 15;
    private static final int SLOTS = 2;

    private NextLoadText() {}

    /** @param all whether every place is shown by itself, not one row for those of a panel that differ in their slots alone */
    public static List<String> lines(Layout layout, double amps, int poles, boolean all, Paint paint) {
        List<NextLoad.Place> fitting = NextLoad.places(layout, poles).stream()
                .filter(place -> place.amps() >= amps)
                .toList();
        String asked = String.format(Locale.ROOT, "%.2f A on %d %s", amps, poles, poles == 1 ? "pole" : "poles");
        Section section = new Section(paint, "Places for one more load of " + asked);
        if (fitting.isEmpty()) {
            section.text("None: no free slot has so much room under ratings, feeders and neutrals.");
        } else {
            List<List<NextLoad.Place>> alike = alike(fitting, all);
            section.table(table(layout, alike.subList(0, all ? alike.size() : Math.min(ROWS, alike.size()))));
            if (!all) {
                section.text("One row for the slots of a panel and phases: how many, and where first poles would sit. "
                        + (alike.size() > ROWS ? (alike.size() - ROWS) + " panels and phases more; " : "")
                        + "--all shows all " + Phrase.counted(fitting.size(), "place") + ", each by itself.");
            }
            section.text(
                    "Outputs are free ones of boards that reach the panel; V is to neutral. Counted are free slots,"
                            + " ratings, each feeder's device and cable where they are stated, and neutrals at the worst"
                            + " use of their loads. Voltage drop, inrush, order and outputs are not"
                            + (PlantPart.isUsedIn(layout.project())
                                    ? ", nor room that is to be left and which system a board serves; every level up"
                                            + " to the source is counted, transformers by their kVA where they state it,"
                                            + " and loads at full use, whatever the scenes"
                                    : "")
                            + ": make a new plan.");
        }
        return Sections.joined(List.of(section.lines(), CautionText.lines(Cautions.ALL, paint)));
    }

    /** Places that differ in their slots alone, together; each by itself where all are asked for. */
    private static List<List<NextLoad.Place>> alike(List<NextLoad.Place> places, boolean each) {
        Map<Object, List<NextLoad.Place>> alike = new LinkedHashMap<>();
        for (NextLoad.Place place : places) {
            Object key = each
                    ? place
                    : List.of(place.panel(), place.phases(), place.amps(), place.limit(), place.takesSwitched());
            alike.computeIfAbsent(key, any -> new ArrayList<>()).add(place);
        }
        return List.copyOf(alike.values());
    }

    /** The slots of one place; of several, how many there are and where the first poles of some would sit. */
    private static String slots(List<NextLoad.Place> alike) {
        if (alike.size() == 1) {
            return alike.get(0).slots().stream().map(String::valueOf).collect(Collectors.joining(", "));
        }
        String first = alike.stream()
                .limit(SLOTS)
                .map(place -> String.valueOf(place.slots().get(0)))
                .collect(Collectors.joining(", "));
        return alike.size() + ": " + first + (alike.size() > SLOTS ? ", ..." : "");
    }

    private static Table table(Layout layout, List<List<NextLoad.Place>> rows) {
        boolean hasVoltages = layout.distribution().points().stream()
                        .mapToDouble(Point::lineToNeutralVolts)
                        .distinct()
                        .count()
                > 1;
        Table table = new Table()
                .words("Panel")
                .words("Slots")
                .words("Phases")
                .number("Up to A")
                .text("By")
                .words("Feeder")
                .words("Switched")
                .number("Outputs");
        if (hasVoltages) {
            table.number("V");
        }
        for (List<NextLoad.Place> alike : rows) {
            NextLoad.Place place = alike.get(0);
            List<String> cells = new ArrayList<>(List.of(
                    place.panel(),
                    slots(alike),
                    place.phases().stream().map(Enum::name).collect(Collectors.joining()),
                    Decimals.fixed(Math.floor(100 * place.amps()) / 100, 2),
                    place.limit(),
                    place.countsFeeder() ? "counted" : "unknown",
                    place.takesSwitched() ? "may be" : "no",
                    String.valueOf(freeOutputs(layout, place.panel()))));
            if (hasVoltages) {
                cells.add(layout.distribution()
                        .point(place.panel())
                        .map(point -> Numbers.fixed(point.lineToNeutralVolts(), 0))
                        .orElse(Numbers.NONE));
            }
            table.row(Tone.PLAIN, cells.toArray(String[]::new));
        }
        return table;
    }

    private static int freeOutputs(Layout layout, String panel) {
        List<Board> reaching = new ArrayList<>(layout.project().boards());
        reaching.removeIf(board -> !board.reaches().contains(panel));
        return reaching.stream()
                .mapToInt(board -> layout.index().typeOf(board).outputs()
                        - layout.outputs(board.id()).size())
                .sum();
    }
}
