package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** Loads that are shut down, and dropped or held on an emergency, together. */
@FileRecord
public record ShutdownGroup(
        @Field(meaning = "Name by which the group is referred to", atLeast = 1)
        String id,

        @Field(meaning = "What the group does on an emergency")
        OnEmergency onEmergency,

        @Field(meaning = "Whether all its loads must sit in one panel", byDefault = "false")
        boolean samePanel)
        implements ShutdownGroupBuilder.With {
    public ShutdownGroup {
        Contract.check(ShutdownGroup.class, id, onEmergency, samePanel);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ShutdownGroupBuilder builder() {
        return Defaults.into(ShutdownGroupBuilder.unset(), ShutdownGroup.class);
    }
}
