package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import evenrise.solver.intake.TypicalInrush;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What is usual at switch-on for loads that state no inrush, for a screen. */
public final class TypicalInrushText {
    private static final int LOADS = 20;

    private TypicalInrushText() {}

    /** @param all whether every load is named */
    public static List<String> lines(String project, List<TypicalInrush> proposals, boolean all, Paint paint) {
        Section section = new Section(paint, "Typical inrush of loads of " + DisplayWidth.cut(project, 60));
        if (proposals.isEmpty()) {
            return section.text("Every load states its inrush.").lines();
        }
        section.text(Phrase.counted(proposals.size(), "load") + (proposals.size() == 1 ? " states" : " state")
                + " no inrush_peak_a. These are guesses by the kind of gear, and the kind is a guess by its name: take"
                + " a datasheet's figure, or √2·idle_a where there is no inrush.");
        Table table = new Table()
                .words("Load")
                .words("Taken for")
                .number("Times running")
                .number("inrush_peak_a")
                .number("inrush_half_ms");
        proposals.stream()
                .limit(all ? Integer.MAX_VALUE : LOADS)
                .forEach(each -> table.row(
                        each.load(),
                        each.kind(),
                        Numbers.amps(each.ratio()),
                        Numbers.amps(each.peakAmps()),
                        Numbers.amps(each.halfMillis())));
        section.table(table);
        if (!all && proposals.size() > LOADS) {
            section.text((proposals.size() - LOADS) + " more; --all shows them.");
        }
        Map<String, Set<String>> kinds = proposals.stream()
                .collect(Collectors.groupingBy(
                        TypicalInrush::source,
                        TreeMap::new,
                        Collectors.mapping(TypicalInrush::kind, Collectors.toCollection(TreeSet::new))));
        kinds.forEach((source, which) -> section.item(String.join(", ", which) + ": " + source + "."));
        return Sections.joined(List.of(section.lines(), CautionText.lines(Cautions.ALL, paint)));
    }
}
