package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;

/** How much some loads draw in a scene: those that everything stated here fits; all loads where nothing is. */
@FileRecord
public record SceneUse(
        @Field(meaning = "Loads meant", distinct = true, optional = true)
        Optional<List<String>> loads,

        @Field(meaning = "Shutdown group of the loads meant", optional = true)
        Optional<String> group,

        @Field(meaning = "Role of the loads meant", optional = true)
        Optional<Role> role,

        @Field(meaning = "System of the loads meant", optional = true)
        Optional<String> system,

        @Field(meaning = "Part of running_a that they draw", min = 0, max = 1)
        double factor)
        implements SceneUseBuilder.With {
    public SceneUse {
        Contract.check(SceneUse.class, loads, group, role, system, factor);
        loads = loads.map(List::copyOf);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SceneUseBuilder builder() {
        return Defaults.into(SceneUseBuilder.unset(), SceneUse.class);
    }
}
