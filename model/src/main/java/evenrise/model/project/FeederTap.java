package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;

/** Conductors that begin at those of another feeder, with no device of their own where they do. */
@FileRecord
public record FeederTap(
        @Field(
                meaning = "Whether they lie in a raceway, or are otherwise protected from damage, all the way",
                optional = true)
        Optional<Boolean> inRaceway,

        @Field(
                meaning = "Whether they leave the enclosure, or the wall between two, in which they begin",
                byDefault = "true")
        boolean leavesEnclosure)
        implements FeederTapBuilder.With {
    public FeederTap {
        Contract.check(FeederTap.class, inRaceway, leavesEnclosure);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static FeederTapBuilder builder() {
        return Defaults.into(FeederTapBuilder.unset(), FeederTap.class);
    }
}
