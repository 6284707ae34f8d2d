package evenrise.solver.rework;

import evenrise.model.contract.Field;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;

/** What a rework that still goes on has found, so that one that is cut off is gone on with. */
public record KeptRework(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "What whoever uses these plans has to know", optional = true)
        List<String> cautions,

        @Field(meaning = "SHA-256 of the project's bytes, as it is judged, hexadecimal")
        String projectSha256,

        @Field(meaning = "SHA-256 of the plan as built, as it is written, hexadecimal")
        String builtSha256,

        @Field(meaning = "Plans found so far, without figures; none of them is finished")
        List<Plan> plans) {
    public static final String FORMAT = "evenrise-rework/1";

    /** Of more, those of the fewest moves are kept, and a selection of the rest: large plants have hundreds. */
    private static final int MOST = 40;

    public KeptRework {
        cautions = List.copyOf(cautions);
        plans = List.copyOf(plans);
    }

    /**
     * Keeps what was found.
     *
     * @param plans by rising moves
     */
    public static KeptRework of(String projectSha256, String builtSha256, List<Plan> plans) {
        return new KeptRework(FORMAT, Cautions.ALL, projectSha256, builtSha256, some(plans));
    }

    private static List<Plan> some(List<Plan> plans) {
        if (plans.size() <= MOST) {
            return plans;
        }
        LinkedHashSet<Integer> kept = new LinkedHashSet<>();
        for (int i = 0; i < MOST / 2; i++) {
            kept.add(i);
        }
        int rest = plans.size() - MOST / 2;
        for (int i = 1; i <= MOST / 2; i++) {
            kept.add(MOST / 2 + rest * i / (MOST / 2) - 1);
        }
        return new ArrayList<>(kept.stream().map(plans::get).toList());
    }

    /** Whether it was made from these. */
    public boolean isOf(String project, String built) {
        return projectSha256.equals(project) && builtSha256.equals(built);
    }
}
