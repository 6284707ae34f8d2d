package evenrise.solver.exhaustive;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.AssignmentBuilder;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.exhaustive.LoadKinds.Kind;
import evenrise.solver.exhaustive.Timetable.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Makes plans of what the trees find. They leave aside slots, neutrals and which phase is called which: so every naming of
 * the phases is tried, and the referee judges.
 */
final class TreePlans {
    /** What only who sits where decides, so that no sequence mends it. */
    private static final Set<String> OF_PLACES = Set.of("neutral", "rating");

    private final SmallProject project;
    private final SlotChooser slots;
    private final PhaseSets sets;
    private final Set<List<Integer>> impossible = new HashSet<>();

    TreePlans(SmallProject project, SlotChooser slots) {
        this.project = project;
        this.slots = slots;
        this.sets = new PhaseSets(project.project);
    }

    /** Whether no plan shares phases like that, whoever comes on when: no slots, or a rule of places that breaks. */
    boolean areImpossible(Sharing sharing) {
        return impossible.contains(key(sharing));
    }

    private static List<Integer> key(Sharing sharing) {
        return Arrays.stream(sharing.phaseSets()).boxed().toList();
    }

    /**
     * The first plan that keeps every rule, timed. Where there is none, and it is not for the sequence, the sharing is
     * impossible from then on.
     *
     * @param kindAt which kind comes on at each instant, or -1
     */
    Optional<Plan> plan(Sharing sharing, Timetable timetable, int[] kindAt) {
        boolean isForPlaces = true;
        for (int[] naming : namings()) {
            Optional<Map<String, List<Phase>>> phases = phases(sharing, naming);
            if (phases.isEmpty()) {
                continue;
            }
            Optional<Map<String, Integer>> chosen = slots.slots(phases.get());
            if (chosen.isPresent()) {
                Plan plan = PlanFinisher.timed(project.project, bare(sharing, timetable, kindAt, chosen.get()));
                List<BrokenRule> broken = Referee.judge(project.project, plan).violations();
                if (broken.isEmpty()) {
                    return Optional.of(plan);
                }
                isForPlaces &= broken.stream().map(BrokenRule::rule).anyMatch(OF_PLACES::contains);
            }
        }
        if (isForPlaces) {
            impossible.add(key(sharing));
        }
        return Optional.empty();
    }

    /** All orders of the phases. */
    private List<int[]> namings() {
        List<int[]> all = new ArrayList<>();
        all.add(new int[0]);
        for (int length = 0; length < project.phases; length++) {
            List<int[]> longer = new ArrayList<>();
            for (int[] naming : all) {
                for (int next = 0; next < project.phases; next++) {
                    int phase = next;
                    if (Arrays.stream(naming).noneMatch(taken -> taken == phase)) {
                        int[] one = Arrays.copyOf(naming, naming.length + 1);
                        one[naming.length] = next;
                        longer.add(one);
                    }
                }
            }
            all = longer;
        }
        return all;
    }

    /** Empty where a load may not have the phases that it is given so. */
    private Optional<Map<String, List<Phase>>> phases(Sharing sharing, int[] naming) {
        Map<String, List<Phase>> phases = new HashMap<>();
        for (SmallLoad load : project.loads) {
            int named = 0;
            for (int phase = 0; phase < naming.length; phase++) {
                if ((sharing.phaseSets()[load.index()] & 1 << phase) != 0) {
                    named |= 1 << naming[phase];
                }
            }
            if (Arrays.binarySearch(load.phaseSets(), named) < 0) {
                return Optional.empty();
            }
            phases.put(load.load().id(), sets.phases(named));
        }
        return Optional.of(phases);
    }

    private Plan bare(Sharing sharing, Timetable timetable, int[] kindAt, Map<String, Integer> chosen) {
        Map<String, Instant> instants = new HashMap<>();
        List<Kind> kinds = new LoadKinds(project, sharing.phaseSets(), (1 << project.phases) - 1).kinds;
        int[] taken = new int[kinds.size()];
        for (int i = 0; i < kindAt.length; i++) {
            if (kindAt[i] >= 0) {
                SmallLoad load = kinds.get(kindAt[i]).members().get(taken[kindAt[i]]++);
                instants.put(load.load().id(), timetable.instants().get(i));
            }
        }
        List<Assignment> assignments = new ArrayList<>();
        for (SmallLoad load : project.loads) {
            String id = load.load().id();
            AssignmentBuilder one = Assignment.builder()
                    .load(id)
                    .panel(project.project.panels().get(0).id())
                    .slot(chosen.get(id));
            if (load.switched()) {
                Instant instant = instants.get(id);
                one.board(Optional.of(project.boards.get(instant.board()).id()))
                        .output(OptionalInt.of(instant.output()));
            }
            assignments.add(one.build());
        }
        return Plan.builder()
                .boards(timetable.settings())
                .assignments(assignments)
                .build();
    }
}
