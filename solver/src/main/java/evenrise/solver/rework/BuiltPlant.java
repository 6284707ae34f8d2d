package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The plant as built beside the project as it is to be: gear that the plan as built feeds and the project has no more, and
 * gear whose breaker is another now. Such gear stands in the plant by a name of its own until its breaker is taken out.
 */
public final class BuiltPlant {
    /** Beside the id of gear whose breaker is replaced. */
    private static final String REPLACED = " (as built)";

    /** Of a load that nobody describes only its poles count; a rating is asked for by the format, and means nothing. */
    private static final double NO_RATING_AMPS = 1;

    private final Project planned;
    private final Project project;
    private final Plan plan;
    private final Set<String> gone = new LinkedHashSet<>();
    private final Set<String> unknown = new LinkedHashSet<>();
    private final Map<String, String> replacing = new LinkedHashMap<>();
    private final List<SpareBreaker> spares;
    private final boolean leavesSpares;

    private BuiltPlant(BuiltPlant other, List<SpareBreaker> spares, boolean leavesSpares) {
        this.planned = other.planned;
        this.project = other.project;
        this.plan = other.plan;
        this.gone.addAll(other.gone);
        this.unknown.addAll(other.unknown);
        this.replacing.putAll(other.replacing);
        this.spares = List.copyOf(spares);
        this.leavesSpares = leavesSpares;
    }

    private BuiltPlant(Project planned, Plan built, Optional<Project> was) {
        this.planned = planned;
        this.spares = List.of();
        this.leavesSpares = false;
        Map<String, Load> now = byId(planned);
        Map<String, Load> then = was.map(BuiltPlant::byId).orElse(Map.of());
        List<Load> old = new ArrayList<>();
        List<Assignment> seats = new ArrayList<>();
        for (Assignment seat : built.assignments()) {
            Load load = now.get(seat.load());
            Optional<Load> before = Optional.ofNullable(then.get(seat.load()));
            if (load != null && !isReplaced(seat, load, before)) {
                seats.add(seat);
                continue;
            }
            String id = load == null ? seat.load() : free(seat.load() + REPLACED, now.keySet());
            if (!gone.add(id)) {
                continue; // Said twice of one load; the last word is where the plan's reader has it.
            }
            if (load != null) {
                replacing.put(id, seat.load());
            }
            if (before.isEmpty()) {
                unknown.add(id);
            }
            old.add(old(id, seat, before));
            seats.add(seat.withLoad(id));
        }
        this.plan = gone.isEmpty() ? built : built.with().assignments(seats).build();
        this.project = gone.isEmpty() ? planned : joined(old);
    }

    /**
     * Compares the two.
     *
     * @param was the project as it was, which says what gear draws that is gone; only its poles are known without
     */
    public static BuiltPlant of(Project planned, Plan built, Optional<Project> was) {
        return new BuiltPlant(planned, built, was);
    }

    /**
     * The same with breakers that feed nothing.
     *
     * @param leaves whether those of gear that is gone stay as spares where nobody needs their slots
     */
    public BuiltPlant withSpares(List<SpareBreaker> there, boolean leaves) {
        return new BuiltPlant(this, there, leaves);
    }

    /** Breakers that feed nothing, as built. */
    public List<SpareBreaker> spares() {
        return spares;
    }

    /** Whether breakers of gear that is gone stay as spares where nobody needs their slots. */
    public boolean leavesSpares() {
        return leavesSpares;
    }

    private static Map<String, Load> byId(Project project) {
        Map<String, Load> loads = new HashMap<>();
        project.loads().forEach(load -> loads.put(load.id(), load));
        return loads;
    }

    /** Of other poles than the breaker that is there, or of another rating or curve than the project had. */
    private static boolean isReplaced(Assignment seat, Load load, Optional<Load> before) {
        int poles = before.map(Load::poles).orElse(seat.phases().size());
        boolean isOfOtherPoles = poles > 0 && poles != load.poles();
        return isOfOtherPoles
                || before.filter(it -> it.breakerAmps() != load.breakerAmps()
                                || !it.curve().equals(load.curve()))
                        .isPresent();
    }

    private static String free(String wanted, Set<String> taken) {
        String id = wanted;
        while (taken.contains(id)) {
            id += "'";
        }
        return id;
    }

    /** As it was, without what it would ask of its place, which it leaves. */
    private Load old(String id, Assignment seat, Optional<Load> before) {
        if (before.isEmpty()) {
            // An amplifier is what nothing waits for.
            return Load.builder()
                    .id(id)
                    .role(Role.AMPLIFIER)
                    .poles(Math.max(1, Math.min(3, seat.phases().size())))
                    .breakerAmps(NO_RATING_AMPS)
                    .runningAmps(0)
                    .switched(seat.board().isPresent())
                    .build();
        }
        Load load = before.get();
        Map<String, Load> now = byId(planned);
        return load.with()
                .id(id)
                .panels(List.of())
                .apartFrom(List.of())
                .samePhaseAs(List.of())
                .fixed(FixedPlace.NONE)
                .guessed(List.of())
                .comesAfter(load.comesAfter().stream().filter(now::containsKey).toList())
                .comesWith(load.comesWith().filter(now::containsKey))
                .shutdownGroup(load.shutdownGroup()
                        .filter(group -> planned.shutdownGroups().stream()
                                .anyMatch(each -> each.id().equals(group))))
                .system(load.system()
                        .filter(system -> planned.systems().stream()
                                .anyMatch(each -> each.id().equals(system))))
                .needsGroups(Optional.empty())
                .rack(Optional.empty())
                .build();
    }

    /** Whoever waits for gear that is replaced waits for what is there, whichever it is. */
    private Project joined(List<Load> old) {
        Map<String, String> oldOf = new HashMap<>();
        replacing.forEach((id, by) -> oldOf.put(by, id));
        List<Load> loads = new ArrayList<>();
        for (Load load : planned.loads()) {
            List<String> both = Stream.concat(
                            load.comesAfter().stream(),
                            load.comesAfter().stream().map(oldOf::get).filter(Objects::nonNull))
                    .toList();
            loads.add(both.size() == load.comesAfter().size() ? load : load.withComesAfter(both));
        }
        loads.addAll(old);
        return planned.withLoads(loads);
    }

    /** The project as it is to be, and beside it what is gone. */
    public Project project() {
        return project;
    }

    /** The project as it is to be. */
    public Project planned() {
        return planned;
    }

    /** The plan as built, with gear that is replaced under its own name. */
    public Plan plan() {
        return plan;
    }

    /** The plan as built without what is gone. */
    public Plan staying() {
        return gone.isEmpty()
                ? plan
                : plan.with()
                        .assignments(plan.assignments().stream()
                                .filter(seat -> !gone.contains(seat.load()))
                                .toList())
                        .build();
    }

    /** Ids of gear whose breaker is taken out. */
    public Set<String> gone() {
        return Collections.unmodifiableSet(gone);
    }

    /** Those of which nobody says what they draw. */
    public Set<String> unknown() {
        return Collections.unmodifiableSet(unknown);
    }

    /** By the id of gear whose breaker is replaced, the load that it is replaced for. */
    public Map<String, String> replacing() {
        return Collections.unmodifiableMap(replacing);
    }

    /** The project for a state of the plant on the way: as it is to be, and what is not yet gone. */
    public Project at(Plan state) {
        if (gone.isEmpty()) {
            return planned;
        }
        Set<String> there = Changes.seats(state).keySet();
        return project.withLoads(project.loads().stream()
                .filter(load -> !gone.contains(load.id()) || there.contains(load.id()))
                .toList());
    }

    /**
     * Whether something that a state breaks counts: not that what is gone has no place, and of gear that nobody describes
     * only that another breaker is in its slot, or another lead on its output.
     */
    boolean counts(BrokenRule found) {
        if (gone.isEmpty()) {
            return true;
        }
        boolean isOfUnknown = isAbout(found, unknown);
        boolean isOfGone = isOfUnknown || isAbout(found, gone);
        return !(isOfGone && found.rule().equals("assigned"))
                && (!isOfUnknown || Set.of("slot", "output").contains(found.rule()));
    }

    private static boolean isAbout(BrokenRule found, Set<String> loads) {
        return found.subjects().stream()
                .filter(subject -> subject.kind() == SubjectKind.LOAD)
                .map(Subject::id)
                .anyMatch(loads::contains);
    }
}
