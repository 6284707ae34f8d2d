package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Board;
import evenrise.model.project.PlantPart;
import evenrise.model.review.NextLoad;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Where one more load could go, for a screen. */
public final class NextLoadText {
    private static final int PLACES = 15;

    private NextLoadText() {}

    /** @param all whether every place is shown */
    public static List<String> lines(Layout layout, double amps, int poles, boolean all, Paint paint) {
        List<NextLoad.Place> fitting = NextLoad.places(layout, poles).stream()
                .filter(place -> place.amps() >= amps)
                .toList();
        String asked = String.format(Locale.ROOT, "%.2f A on %d %s", amps, poles, poles == 1 ? "pole" : "poles");
        Section section = new Section(paint, "Places for one more load of " + asked);
        if (fitting.isEmpty()) {
            section.text("None: no free slot has so much room under ratings, feeders and neutrals.");
        } else {
            section.table(table(layout, fitting.subList(0, all ? fitting.size() : Math.min(PLACES, fitting.size()))));
            if (!all && fitting.size() > PLACES) {
                section.text((fitting.size() - PLACES) + " more; --all shows them.");
            }
            section.text("Counted are free slots, ratings, each feeder's device and cable where they are stated, and"
                    + " neutrals at the worst use of their loads. Voltage drop, inrush, order and outputs are not"
                    + (PlantPart.isUsedIn(layout.project())
                            ? ", nor room that is to be left and which system a board serves; every level up to the"
                                    + " source is counted, transformers by their kVA where they state it, and loads at"
                                    + " full use, whatever the scenes"
                            : "")
                    + ": make a new plan.");
        }
        return Sections.joined(List.of(section.lines(), CautionText.lines(Cautions.ALL, paint)));
    }

    private static Table table(Layout layout, List<NextLoad.Place> places) {
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
                .words("By")
                .words("Feeder")
                .words("Switched")
                .number("Free outputs");
        if (hasVoltages) {
            table.number("To neutral, V");
        }
        for (NextLoad.Place place : places) {
            List<String> cells = new ArrayList<>(List.of(
                    place.panel(),
                    place.slots().stream().map(String::valueOf).collect(Collectors.joining(", ")),
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
