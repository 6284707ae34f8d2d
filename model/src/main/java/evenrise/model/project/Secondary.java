package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** The system that a transformer feeds. */
@FileRecord
public record Secondary(
        @Field(meaning = "System of line conductors") PhaseSystem system,

        @Field(meaning = "Nominal rms voltage between a line conductor and neutral", above = 0, max = 1000)
        double lineToNeutralVolts)
        implements SecondaryBuilder.With {
    public Secondary {
        Contract.check(Secondary.class, system, lineToNeutralVolts);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SecondaryBuilder builder() {
        return Defaults.into(SecondaryBuilder.unset(), Secondary.class);
    }
}
