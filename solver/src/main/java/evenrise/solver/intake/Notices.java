package evenrise.solver.intake;

import evenrise.model.plan.Finding;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What there is to tell about a list, in the order in which it was found. */
final class Notices {
    private final List<Notice> all = new ArrayList<>();
    private final Map<String, Integer> assumed = new LinkedHashMap<>();
    private final ReadValues values = new ReadValues();
    private int problems;
    private int leftOut;

    void add(Notice notice) {
        all.add(notice);
        problems += notice.sort() == Notice.Kind.PROBLEM ? 1 : 0;
    }

    void guess(String text) {
        add(Notice.guess(text));
    }

    /** The same assumption about one more row. */
    void assume(String text) {
        assumed.merge(text, 1, Integer::sum);
    }

    /** Turns what was assumed about rows into guesses, each with the number of rows. */
    void sumUp(ReadTable sheet) {
        String where = sheet.name().isEmpty() ? "" : "sheet '" + sheet.name() + "': ";
        assumed.forEach((text, rows) -> guess(where + text + " (" + rows + (rows == 1 ? " row)" : " rows)")));
        assumed.clear();
    }

    ReadValues values() {
        return values;
    }

    /** So many pieces are in no load; why is told by a notice. */
    void leaveOut(int pieces) {
        leftOut += pieces;
    }

    /** Pieces that are in no load. */
    int leftOut() {
        return leftOut;
    }

    int problems() {
        return problems;
    }

    /** What holds for the whole list before what holds for a place of it. */
    List<Finding> all() {
        Comparator<Finding> wholeFirst =
                Comparator.comparing(notice -> !notice.place().isEmpty());
        return all.stream().map(Finding.class::cast).sorted(wholeFirst).toList();
    }
}
