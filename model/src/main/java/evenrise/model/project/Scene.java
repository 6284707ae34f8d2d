package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;

/** A use of the plant: which part of its running current each load draws. */
@FileRecord
public record Scene(
        @Field(meaning = "Name by which the scene is referred to", atLeast = 1)
        String id,

        @Field(
                meaning = "How much it counts in the objective's deviations, of all scenes",
                min = 0,
                max = 1e6,
                byDefault = "1")
        double weight,

        @Field(
                meaning = "Part of running_a that loads draw which no entry of use names",
                min = 0,
                max = 1,
                byDefault = "1")
        double others,

        @Field(meaning = "Parts of running_a; of entries that name a load the last counts", byDefault = "[]")
        List<SceneUse> use,

        @Field(
                meaning = "Why what a scene leaves out cannot run beside the rest: an interlock, one and the same"
                        + " machine, the season. A node that keeps its rating in scenes alone rests on it; none stated"
                        + " is a finding",
                atLeast = 1,
                optional = true)
        Optional<String> basis)
        implements SceneBuilder.With {
    public Scene {
        Contract.check(Scene.class, id, weight, others, use, basis);
        use = List.copyOf(use);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SceneBuilder builder() {
        return Defaults.into(SceneBuilder.unset(), Scene.class);
    }
}
