package evenrise.solver.report;

import java.util.List;

/** What whoever works from a plan must know. */
final class CautionText {
    private CautionText() {}

    static List<String> lines(List<String> cautions, Paint paint) {
        Section section = new Section(paint, "Cautions");
        cautions.forEach(section::item);
        return section.lines();
    }
}
