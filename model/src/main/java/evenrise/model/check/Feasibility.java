package evenrise.model.check;

import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/**
 * Finds what no plan can keep, before any is sought. Each check is a necessary condition: where it fails, no plan keeps
 * every hard rule; where all hold, a plan may still not exist.
 */
public final class Feasibility {
    private static final List<BiConsumer<Candidates, Consumer<Objection>>> OF_LOADS = List.of(
            SlotForEachLoad::check,
            SlotsForAllLoads::check,
            OutputsForAllLoads::check,
            RatingsSuffice::check,
            InrushFits::check,
            EventInrushFits::check,
            TimeSuffices::check,
            PanelsToKeepApart::check,
            SamePhasesFixed::check);
    private static final List<BiConsumer<Candidates, Consumer<Objection>>> OF_GROUPS =
            List.of(BoardsForEachGroup::check, EmergencyClasses::check);

    private Feasibility() {}

    /** Of a project without errors. */
    public static List<Objection> impossible(Project project) {
        return impossible(project, Set.of());
    }

    /**
     * Of a project with errors, each of which gets the benefit of the doubt.
     *
     * @param errors pointers to what is wrong in the project
     */
    public static List<Objection> impossible(Project project, Set<String> errors) {
        Optional<Project> sound = BenefitOfDoubt.of(project, errors);
        if (sound.isEmpty() || !errors.isEmpty() && PlantPart.isUsedIn(project)) {
            return List.of(); // what stands in for a wrong part of a plant might ask more of it than its cure
        }
        Candidates candidates = new Candidates(new ProjectParts(sound.get(), Set.of()));
        List<Objection> found = new ArrayList<>();
        OF_LOADS.forEach(check -> check.accept(candidates, found::add));
        if (BenefitOfDoubt.leavesGroupsSure(errors)) {
            OF_GROUPS.forEach(check -> check.accept(candidates, found::add));
        }
        return found.stream()
                .map(it -> BenefitOfDoubt.asIn(project, sound.get(), it))
                .toList();
    }
}
