package evenrise.solver.report;

import evenrise.model.plan.Cautions;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Alternates side by side, for a screen. */
public final class AlternateText {
    private AlternateText() {}

    public static List<String> lines(String title, List<Alternate> all, Paint paint) {
        Section section = new Section(paint, title);
        Table table = new Table().words("");
        all.forEach(each -> table.number(each.name()));
        for (AlternateRows.Row row : AlternateRows.figures(all)) {
            List<String> cells = new ArrayList<>(List.of(row.label()));
            row.cells()
                    .forEach(cell -> cells.add(
                            cell.value() + (cell.difference().isEmpty() ? "" : " (" + cell.difference() + ")")));
            table.row(cells.toArray(String[]::new));
        }
        section.table(table);
        all.forEach(
                each -> section.text(each.keepsAll() ? Tone.PLAIN : Tone.BAD, each.name() + ": " + each.headline()));
        List<DrawnPrices> drawn = DrawnPrices.of(all);
        drawn.forEach(each -> {
            section.text(each.names() + ", where quantities are open: " + each.sentence());
            each.reasons().forEach(section::text);
        });
        if (!drawn.isEmpty()) {
            section.text(DrawnPrices.HOW);
        }
        bases(all)
                .forEach((sentence, names) ->
                        section.text((names.size() == all.size() ? "" : String.join(", ", names) + ": ") + sentence));
        return Sections.joined(List.of(section.lines(), CautionText.lines(Cautions.ALL, paint)));
    }

    /** What stands with prices, each once, with the alternates that it is about. */
    public static Map<String, List<String>> bases(List<Alternate> all) {
        Map<String, List<String>> bases = new LinkedHashMap<>();
        for (Alternate each : all) {
            List<String> sentences = new ArrayList<>(List.of(each.basis().exclusionWords()));
            sentences.addAll(each.basis().assumptions());
            sentences.forEach(sentence ->
                    bases.computeIfAbsent(sentence, any -> new ArrayList<>()).add(each.name()));
        }
        return bases;
    }
}
