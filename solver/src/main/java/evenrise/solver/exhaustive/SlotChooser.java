package evenrise.solver.exhaustive;

import evenrise.model.project.Phase;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds slots. */
@FunctionalInterface
public interface SlotChooser {
    /**
     * A slot of its first pole for each load of a project with one panel, by its id.
     *
     * @param phases that each load is to touch, by its id
     * @return empty where the panel has no such slots for all at once
     */
    Optional<Map<String, Integer>> slots(Map<String, List<Phase>> phases);
}
