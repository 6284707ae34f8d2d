package evenrise.solver.commissioning;

import evenrise.model.contract.Phrase;
import evenrise.model.measured.Meter;
import evenrise.model.measured.Visit;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** When and with what a row was read. */
final class Visits {
    private final Map<String, Meter> meters;
    private final Optional<String> day;
    private final List<String> problems;
    private final TreeSet<String> unknown = new TreeSet<>();
    private int withoutMeter;
    private int withoutDay;

    /**
     * @param meters by their bare names
     * @param day of what states none
     */
    Visits(Map<String, Meter> meters, Optional<String> day, List<String> problems) {
        this.meters = meters;
        this.day = day;
        this.problems = problems;
    }

    static String bare(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("\\s+", "");
    }

    /** Ask it of rows alone that hold a reading. */
    Visit of(FilledSheet sheet, ReadTable.Row row) {
        String at = sheet.at(row);
        Optional<String> own = new FilledCells(problems, false).day(FilledSheet.cell(row, sheet.column("date")), at);
        Optional<String> read = own.or(() -> day);
        withoutDay += read.isPresent() ? 0 : 1;
        String name = sheet.text(row, "meter", "instrument");
        withoutMeter += name.isEmpty() ? 1 : 0;
        Meter meter = meters.get(bare(name));
        if (meter == null) {
            if (!name.isEmpty()) {
                unknown.add(name);
            }
            meter = Meter.usual(name);
        }
        return new Visit(read, meter, at);
    }

    List<String> notes() {
        List<String> notes = new ArrayList<>();
        String usual = " taken as off by 3 % of the reading and 0.05 A, and times by half a second (common practice, no"
                + " source).";
        if (withoutMeter > 0) {
            notes.add(Phrase.counted(withoutMeter, "row") + " with readings and no meter:" + usual);
        }
        if (!unknown.isEmpty()) {
            notes.add(Phrase.counted(unknown.size(), "meter") + " that no table of meters states: "
                    + Phrase.quoted(List.copyOf(unknown), 12) + ":" + usual);
        }
        if (withoutDay > 0) {
            notes.add(
                    Phrase.counted(withoutDay, "row") + " with readings and no date; --date says it for all of them.");
        }
        return notes;
    }
}
