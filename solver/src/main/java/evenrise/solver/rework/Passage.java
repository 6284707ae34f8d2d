package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * The way from a plan as built to another: single changes, each done or not, and what the plant is like when some are
 * done. Changes are numbered: those of loads first, then those of settings and of outputs' times, then what is taken out.
 */
final class Passage {
    /** Plans that are kept at hand; more would fill the memory with large plants. */
    private static final int MOST_PLANS = 64;

    final Project project;
    final ProjectIndex index;
    final Plan built;
    final BuiltPlant plant;
    final Changes changes;
    final Harm start;
    private final List<Double> startOver;
    private final NightLimits night;
    private final OutputTimes builtTimes;
    private final OutputTimes targetTimes;

    private final Map<String, Integer> changeOf = new HashMap<>();
    /** By load, those behind its contactor or before it, with which it sits in one panel. */
    private final Map<String, Set<String>> mates = new HashMap<>();

    private final List<NodeLimits> limits;
    private final Outages whoIsOff;
    private final ComingOnAlone aloneAsBuilt;
    private final Map<BitSet, Optional<String>> judged = new HashMap<>();
    private final Map<BitSet, Plan> plans = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<BitSet, Plan> eldest) {
            return size() > MOST_PLANS;
        }
    };

    Passage(Project project, Plan built, Plan target) {
        this(project, built, target, NightLimits.NONE);
    }

    Passage(Project project, Plan built, Plan target, NightLimits night) {
        this(BuiltPlant.of(project, built, Optional.empty()), target, night);
    }

    Passage(BuiltPlant plant, Plan target, NightLimits night) {
        this.night = night;
        this.plant = plant;
        this.project = plant.project();
        this.index = new ProjectIndex(project);
        this.built = plant.plan();
        this.changes = Changes.between(index, built, target, plant.gone());
        this.builtTimes = OutputTimes.of(index, built);
        this.targetTimes = OutputTimes.of(index, target);
        for (int i = 0; i < changes.loads().size(); i++) {
            changeOf.put(changes.loads().get(i).load(), i);
        }
        for (int i = 0; i < changes.removals().size(); i++) {
            changeOf.put(changes.removals().get(i).load(), firstRemoval() + i);
        }
        plant.replacing().forEach((old, now) -> {
            mates.computeIfAbsent(old, any -> new LinkedHashSet<>()).add(now);
            mates.computeIfAbsent(now, any -> new LinkedHashSet<>()).add(old);
        });
        for (Load load : project.loads()) {
            load.comesWith().ifPresent(lead -> {
                mates.computeIfAbsent(lead, any -> new LinkedHashSet<>()).add(load.id());
                mates.computeIfAbsent(load.id(), any -> new LinkedHashSet<>()).add(lead);
            });
        }
        this.limits = NodeLimits.of(project);
        this.whoIsOff = new Outages(index);
        Layout asBuilt = Layout.of(index, PlanFinisher.timed(project, built));
        this.start = Harm.of(asBuilt, plant::counts);
        this.startOver = OverLimits.amps(asBuilt);
        this.aloneAsBuilt = new ComingOnAlone(limits, () -> asBuilt);
    }

    int size() {
        return firstRemoval() + changes.removals().size();
    }

    private int firstRemoval() {
        return changes.loads().size() + changes.settingsInAll();
    }

    boolean isRemoval(int change) {
        return change >= firstRemoval();
    }

    Removal removal(int change) {
        return changes.removals().get(change - firstRemoval());
    }

    boolean isSetting(int change) {
        return !isLoad(change) && !isTime(change) && !isRemoval(change);
    }

    boolean isLoad(int change) {
        return change < changes.loads().size();
    }

    LoadChange load(int change) {
        return changes.loads().get(change);
    }

    SettingChange setting(int change) {
        return changes.settings().get(change - changes.loads().size());
    }

    boolean isTime(int change) {
        return change >= changes.loads().size() + changes.settings().size() && !isRemoval(change);
    }

    TimeChange time(int change) {
        return changes.times()
                .get(change - changes.loads().size() - changes.settings().size());
    }

    /** Outputs that are set otherwise with this change: its own, or that to which a lead goes. */
    Optional<TimeChange> timeWith(int change) {
        if (isTime(change)) {
            return Optional.of(time(change));
        }
        if (!isLoad(change)) {
            return Optional.empty();
        }
        Assignment to = load(change).to();
        return OutputTimes.key(to)
                .filter(key -> builtTimes.differs(targetTimes, key))
                .map(key -> new TimeChange(
                        to.load(),
                        to.board().orElseThrow(),
                        to.output().getAsInt(),
                        targetTimes.seconds(key).orElseThrow()));
    }

    BitSet all() {
        BitSet all = new BitSet();
        all.set(0, size());
        return all;
    }

    /** The plant when these changes are done. */
    Plan after(BitSet done) {
        Plan known = plans.get(done);
        if (known == null) {
            known = made(done);
            plans.put((BitSet) done.clone(), known);
        }
        return known;
    }

    private Plan made(BitSet done) {
        Map<String, Assignment> seats = new LinkedHashMap<>(Changes.seats(built));
        Map<String, BoardSetting> set = new LinkedHashMap<>();
        built.boards().forEach(each -> set.put(each.id(), each));
        OutputTimes times = builtTimes.copy();
        for (int i = done.nextSetBit(0); i >= 0; i = done.nextSetBit(i + 1)) {
            if (isLoad(i)) {
                seats.put(load(i).load(), load(i).to());
            } else if (isRemoval(i)) {
                seats.remove(removal(i).load());
            } else if (isSetting(i)) {
                set.put(setting(i).board(), setting(i).to());
            }
            timeWith(i).ifPresent(each -> times.set(OutputTimes.key(each.board(), each.output()), each.seconds()));
        }
        return PlanFinisher.timed(project, times.in(bare(seats, set)));
    }

    static Plan bare(Map<String, Assignment> seats, Map<String, BoardSetting> set) {
        return Plan.builder()
                .boards(List.copyOf(set.values()))
                .assignments(List.copyOf(seats.values()))
                .build();
    }

    /** What is worse than at the start when these changes are done; empty where nothing is. */
    Optional<String> worse(BitSet done) {
        Optional<String> known = judged.get(done);
        if (known == null) {
            known = Harm.of(Layout.of(index, after(done)), plant::counts)
                    .worseThan(start)
                    .map(Breach::text);
            judged.put((BitSet) done.clone(), known);
        }
        return known;
    }

    /** Places that are broken when these changes are done. */
    int broken(BitSet done) {
        return Harm.of(Layout.of(index, after(done)), plant::counts).places().size();
    }

    /** The least set of changes with this one that can be done at once: whoever holds its slot or output goes along. */
    BitSet closure(int change, BitSet done) {
        BitSet together = new BitSet();
        together.set(change);
        Map<String, Assignment> seats = Changes.seats(after(done));
        Map<String, String> slots = new HashMap<>();
        Map<String, String> outputs = new HashMap<>();
        seats.values().forEach(seat -> {
            slots(seat).forEach(slot -> slots.put(slot, seat.load()));
            output(seat).ifPresent(output -> outputs.put(output, seat.load()));
        });
        List<Integer> open = new ArrayList<>(List.of(change));
        while (!open.isEmpty()) {
            int next = open.remove(open.size() - 1);
            Set<String> inTheWay = new LinkedHashSet<>();
            if (isRemoval(next)) {
                inTheWay.addAll(mates.getOrDefault(removal(next).load(), Set.of()));
            }
            if (isLoad(next)) {
                slots(load(next).to())
                        .forEach(slot -> Optional.ofNullable(slots.get(slot)).ifPresent(inTheWay::add));
                output(load(next).to()).map(outputs::get).ifPresent(inTheWay::add);
                if (load(next).changesPanel() || load(next).from().isEmpty()) {
                    inTheWay.addAll(mates.getOrDefault(load(next).load(), Set.of()));
                }
            }
            for (String holder : inTheWay) {
                Integer other = changeOf.get(holder);
                if (other != null && !done.get(other) && !together.get(other)) {
                    together.set(other);
                    open.add(other);
                }
            }
        }
        return together;
    }

    /** Slots that a breaker takes there, each by panel and number. */
    List<String> slots(Assignment seat) {
        return slots(seat.load(), seat.panel(), seat.slot());
    }

    List<String> slots(String load, String panel, int slot) {
        int poles = index.load(load).map(Load::poles).orElse(1);
        return index.panel(panel).stream()
                .flatMap(found -> index.slotsOf(found).span(slot, poles).stream())
                .map(number -> panel + "\n" + number)
                .toList();
    }

    static Optional<String> output(Assignment seat) {
        return seat.board()
                .filter(any -> seat.output().isPresent())
                .map(board -> board + "\n" + seat.output().getAsInt());
    }

    /** Loads that these changes are about. */
    Set<String> loads(BitSet changes) {
        Set<String> loads = new LinkedHashSet<>();
        for (int i = changes.nextSetBit(0); i >= 0; i = changes.nextSetBit(i + 1)) {
            if (isLoad(i)) {
                loads.add(load(i).load());
            } else if (isRemoval(i)) {
                loads.add(removal(i).load());
            }
        }
        return loads;
    }

    /**
     * How a stage is done.
     *
     * @param isSystemOff whether loads go off by command
     * @param systemsOff systems whose commands these are, as they come on again; none where one command is for all
     * @param off loads without current meanwhile, whether worked on or not
     */
    record Way(
            boolean isSystemOff,
            List<String> systemsOff,
            Isolation isolation,
            Set<String> off,
            Set<String> outages,
            OrderCost cost) {}

    /** Whether a load goes off and comes on by command in a stage. */
    boolean isByCommand(Way way, String load) {
        return way.isSystemOff
                && index.load(load)
                        .filter(found -> Commands.isFor(way.systemsOff, found))
                        .isPresent();
    }

    /** How to get from {@code done} through {@code next}; empty where something would be worse than at the start. */
    Optional<Way> way(BitSet done, BitSet next) {
        BitSet after = (BitSet) done.clone();
        after.or(next);
        if (leavesUnknown(after) || worse(after).isPresent()) {
            return Optional.empty();
        }
        return Optional.of(unchecked(done, next, after))
                .filter(way -> night.allows(way.off, way.outages, minutes(done, next, way)))
                .filter(way -> currentsHold(done, way.off));
    }

    /** Whether a load goes to other lines while gear is still in of which nobody says what it draws. */
    boolean leavesUnknown(BitSet done) {
        return changes.removals().stream()
                        .filter(removal -> plant.unknown().contains(removal.load()))
                        .anyMatch(removal -> !done.get(changeOf.get(removal.load())))
                && done.stream().anyMatch(change -> isLoad(change) && goesToOtherLines(load(change)));
    }

    private boolean goesToOtherLines(LoadChange change) {
        return change.from().isEmpty() || !lines(change.from().get()).equals(lines(change.to()));
    }

    /** The lines of the panel that a breaker touches there. */
    private Set<String> lines(Assignment seat) {
        return Lines.of(index, seat.load(), seat.panel(), seat.slot());
    }

    /** How long a stage may take, where a night has an end. */
    OptionalDouble longestMinutes() {
        return night.windowsMinutes().stream().mapToDouble(Double::doubleValue).max();
    }

    /** How long a stage takes; nobody asks where no night has an end. */
    private double minutes(BitSet done, BitSet next, Way way) {
        return night.windowsMinutes().isEmpty()
                ? 0
                : new StageMinutes(index, WorkMinutes.of(project), changes)
                        .of(StageSteps.of(this, done, next, way)).stream()
                                .mapToDouble(Double::doubleValue)
                                .sum();
    }

    /** The same without asking what it breaks. */
    Way unchecked(BitSet done, BitSet next) {
        BitSet after = (BitSet) done.clone();
        after.or(next);
        return unchecked(done, next, after);
    }

    private Way unchecked(BitSet done, BitSet next, BitSet after) {
        Set<String> locked = loads(next);
        Isolation isolation = isolation(next);
        Outages.Outage outage = whoIsOff.of(
                locked, isolation, seated(done), new ComingOnAlone(limits, () -> Layout.of(index, after(after))));
        Set<String> groups = groups(outage.loads());
        OrderCost cost = new OrderCost(outage.commands().size(), isolation.size(), locked.size(), groups.size(), 1);
        return new Way(outage.isByCommand(), outage.systems(), isolation, outage.loads(), groups, cost);
    }

    /** Shutdown groups of these loads; those without one share the empty name. */
    Set<String> groups(Set<String> loads) {
        Set<String> groups = new TreeSet<>();
        loads.forEach(
                load -> groups.add(index.load(load).flatMap(Load::shutdownGroup).orElse("")));
        return groups;
    }

    /** What goes off with loads and isolated parts of the plant as built. */
    Outages.Outage outage(Set<String> loads, Isolation isolation) {
        return whoIsOff.of(loads, isolation, seated(new BitSet()), aloneAsBuilt);
    }

    /** What is dead while these changes are made. */
    Isolation isolation(BitSet next) {
        return Isolation.of(
                index,
                next.stream().filter(this::isLoad).mapToObj(this::load).toList(),
                next.stream().filter(this::isRemoval).mapToObj(this::removal).toList());
    }

    /** Where everything is when these changes are done. */
    private List<Assignment> seated(BitSet done) {
        Stream<Assignment> built = Changes.seats(this.built).values().stream().flatMap(seat -> {
            Integer change = changeOf.get(seat.load());
            if (change == null || !done.get(change)) {
                return Stream.of(seat);
            }
            return isRemoval(change) ? Stream.empty() : Stream.of(load(change).to());
        });
        Stream<Assignment> added = done.stream()
                .filter(change -> isLoad(change) && load(change).from().isEmpty())
                .mapToObj(change -> load(change).to());
        return Stream.concat(built, added).toList();
    }

    /**
     * Whether lines and neutrals hold with these loads off. A neutral may carry more when loads go off, since what is left
     * may be less even, and so may a line before a transformer.
     */
    private boolean currentsHold(BitSet done, Set<String> off) {
        Plan whole = after(done);
        Plan left = whole.with()
                .assignments(whole.assignments().stream()
                        .filter(seat -> !off.contains(seat.load()))
                        .toList())
                .build();
        List<Double> excess = OverLimits.amps(Layout.of(index, left));
        for (int i = 0; i < excess.size(); i++) {
            if (excess.get(i) > startOver.get(i) + Tolerances.AMPS) {
                return false;
            }
        }
        return true;
    }

    /** When a load comes on; first where it has no time. */
    static double on(Assignment seat) {
        return seat.onSeconds().orElse(Double.NEGATIVE_INFINITY);
    }
}
