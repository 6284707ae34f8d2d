package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** A source beside the supply. */
@FileRecord
public record NodeSource(
        @Field(meaning = "System of line conductors") PhaseSystem system,

        @Field(meaning = "Nominal rms voltage between a line conductor and neutral", above = 0, max = 1000)
        double lineToNeutralVolts,

        @Field(meaning = "Nominal frequency", above = 0, max = 400)
        double frequencyHertz)
        implements NodeSourceBuilder.With {
    public NodeSource {
        Contract.check(NodeSource.class, system, lineToNeutralVolts, frequencyHertz);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static NodeSourceBuilder builder() {
        return Defaults.into(NodeSourceBuilder.unset(), NodeSource.class);
    }
}
