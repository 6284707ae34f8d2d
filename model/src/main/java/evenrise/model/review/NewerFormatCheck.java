package evenrise.model.review;

import evenrise.model.contract.FormatVersion;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.util.List;

/** A project of a later version of its format may say what no figure here takes into account. */
final class NewerFormatCheck implements ElectricalCheck {
    private static final String ID = "newer-format";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        String format = layout.project().format();
        if (FormatVersion.isNewer(format, Project.FORMAT)) {
            findings.notCheckedAnywhere(
                    ID,
                    Remarks.PLANT,
                    List.of(Remarks.PLANT),
                    "a newer version of this program: the project is of format " + format
                            + ", and whatever fields came in after " + Project.FORMAT
                            + " are left out of every figure");
        }
    }
}
