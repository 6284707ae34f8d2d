package evenrise.model.check;

import evenrise.model.contract.FormatVersion;
import evenrise.model.project.TitleBlock;
import java.util.ArrayList;
import java.util.List;

/** What is wrong with a title block. */
public final class TitleBlockChecks {
    private static final int LONGEST_PREFIX = 8;

    private TitleBlockChecks() {}

    /** The format is ours, and numbers of sheets stay short enough for every margin. */
    public static List<Objection> errors(TitleBlock block) {
        List<Objection> found = new ArrayList<>();
        if (!FormatVersion.isRead(block.format(), TitleBlock.FORMAT)) {
            found.add(Identity.format(block.format(), TitleBlock.FORMAT));
        }
        if (block.sheetPrefix().length() > LONGEST_PREFIX) {
            found.add(Objection.error(
                    "/sheet_prefix",
                    Shown.quoted(block.sheetPrefix()),
                    "at most " + LONGEST_PREFIX + " signs",
                    "Maybe take the discipline's letter alone."));
        }
        return found;
    }
}
