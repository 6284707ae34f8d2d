package evenrise.model.check;

import evenrise.model.contract.FormatVersion;
import evenrise.model.intake.Mapping;
import java.util.List;

/** Finds what makes a mapping none of ours. */
public final class MappingChecks {
    private MappingChecks() {}

    /** The format is ours. */
    public static List<Objection> errors(Mapping mapping) {
        return FormatVersion.isRead(mapping.format(), Mapping.FORMAT)
                ? List.of()
                : List.of(Identity.format(mapping.format(), Mapping.FORMAT));
    }
}
