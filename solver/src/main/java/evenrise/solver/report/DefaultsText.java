package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.project.TakenDefault;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What loads took from a project's defaults, for a screen: entry by entry, field by field. */
final class DefaultsText {
    private static final int LOADS = 6;

    private DefaultsText() {}

    /** @param all whether every load is named */
    static List<String> lines(List<TakenDefault> taken, boolean all, Paint paint) {
        long loads = taken.stream()
                .flatMap(each -> each.takenBy().stream())
                .distinct()
                .count();
        Section section = new Section(paint, "Taken from defaults");
        section.text("Loads that take something from the project's defaults: " + loads
                + ". Of entries that give a field the last counts.");
        Map<Integer, List<TakenDefault>> entries = taken.stream()
                .collect(Collectors.groupingBy(TakenDefault::entry, LinkedHashMap::new, Collectors.toList()));
        entries.forEach((entry, fields) -> {
            section.text("Entry " + entry + ", for " + fields.get(0).meant());
            fields.forEach(field -> section.item(line(field, all ? Integer.MAX_VALUE : LOADS)));
        });
        return section.lines();
    }

    private static String line(TakenDefault field, int most) {
        return field.field() + " " + field.value() + ": "
                + (field.takenBy().isEmpty() ? "no load" : counted(field.takenBy(), most))
                + besides("stated by ", field.statedBy(), most)
                + besides("from a later entry for ", field.laterFor(), most)
                + besides("not whole for ", field.incompleteFor(), most);
    }

    private static String besides(String what, List<String> loads, int most) {
        return loads.isEmpty() ? "" : "; " + what + counted(loads, most);
    }

    private static String counted(List<String> loads, int most) {
        return Phrase.counted(loads.size(), "load") + " (" + Phrase.listed(loads, most) + ")";
    }
}
