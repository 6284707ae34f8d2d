package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;

/** A source beside the supply. */
@FileRecord
public record NodeSource(
        @Field(meaning = "System of line conductors") PhaseSystem system,

        @Field(meaning = "Nominal rms voltage between a line conductor and neutral", above = 0, max = 1000)
        double lineToNeutralVolts,

        @Field(meaning = "Nominal frequency", above = 0, max = 400)
        double frequencyHertz,

        @Field(
                meaning = "What stands behind its terminals, for the electrical review; the supply's own is"
                        + " electrical.source",
                optional = true)
        Optional<SupplySource> behind)
        implements NodeSourceBuilder.With {
    public NodeSource {
        Contract.check(NodeSource.class, system, lineToNeutralVolts, frequencyHertz, behind);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static NodeSourceBuilder builder() {
        return Defaults.into(NodeSourceBuilder.unset(), NodeSource.class);
    }
}
