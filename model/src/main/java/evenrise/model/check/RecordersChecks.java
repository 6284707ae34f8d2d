package evenrise.model.check;

import evenrise.model.contract.FormatVersion;
import evenrise.model.intake.Recorders;
import java.util.ArrayList;
import java.util.List;

/** What is wrong with what was said of recordings. */
public final class RecordersChecks {
    private RecordersChecks() {}

    /** The format is ours, and each recorder names a current. */
    public static List<Objection> errors(Recorders recorders) {
        List<Objection> found = new ArrayList<>();
        if (!FormatVersion.isRead(recorders.format(), Recorders.FORMAT)) {
            found.add(Identity.format(recorders.format(), Recorders.FORMAT));
        }
        for (int i = 0; i < recorders.recorders().size(); i++) {
            if (recorders.recorders().get(i).phases().isEmpty()) {
                found.add(Objection.error(
                        "/recorders/" + i,
                        "without a current",
                        "the header of one phase's current at least",
                        "Say phase_a, phase_b or phase_c."));
            }
        }
        return found;
    }
}
