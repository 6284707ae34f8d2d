package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Overlap;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.Spare;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.SceneCurrents;
import evenrise.model.rules.SceneCurrents.InScene;
import evenrise.solver.bounds.Seats;
import evenrise.solver.bounds.Seats.Seat;
import evenrise.solver.bounds.SourceShares;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What the sources of a distribution must bear in any order of switching, as an integer program without time: loads choose
 * panels and phases, and at every source, on every phase, the last to come on of the loads of a system and role whose excess
 * is at least some threshold brings that, and finds the bases of the others there, those of earlier roles, and what other
 * systems draw in use. A relaxation of the contract: slots, boards and times are left out. docs/bounds.md has the argument.
 */
final class DistributionLadder {
    private static final long LARGEST = ExactModelCurrents.LARGEST;

    private final CpModel model = new CpModel();
    private final Project project;
    private final ProjectIndex index;
    private final Seats seats;
    private final SceneCurrents scenes;
    private final List<Point> points;
    private final List<NodeLimits> limits;
    private final boolean tellsRolesApart;
    private final List<Load> loads;
    private final Map<String, List<Choice>> choices = new LinkedHashMap<>();
    private final DistributionBoards boards;

    /** Of the supply and of each source, by its place among the points. */
    private final Map<Integer, IntVar> peaks = new LinkedHashMap<>();

    private final LinearExprBuilder deviations = LinearExpr.newBuilder();

    private record Choice(Seat seat, BoolVar taken) {}

    /** A load as a phase of a node sees it: all ways to sit that show the same part of it. */
    private record Item(Load load, double part, BoolVar there) {}

    /**
     * @param tellsRolesApart whether no load can come on a little before one of an earlier role and still be forgiven
     * @throws Unfit where a load fits nowhere, or there is no solver on this platform
     */
    DistributionLadder(Project project, boolean tellsRolesApart) {
        NativeSolver.load();
        this.project = project;
        this.tellsRolesApart = tellsRolesApart;
        index = new ProjectIndex(project);
        seats = new Seats(project);
        scenes = SceneCurrents.of(index);
        points = seats.distribution().points();
        limits = NodeLimits.of(project);
        loads = project.loads().stream()
                .map(each -> index.load(each.id()).orElseThrow())
                .toList();
        loads.forEach(this::choose);
        loads.forEach(this::stayTogether);
        sameGroupsTogether();
        keepRoom();
        boards = new DistributionBoards(model, index, loads);
        loads.forEach(this::reach);
        for (Point point : points) {
            boolean isSource = point.index() == 0 || point.isFurtherSource();
            if (isSource || limits.get(point.index()).inrushLimitAmps().isPresent()) {
                bear(point, isSource);
            }
            if (carriesPlainSums(point)) {
                run(point);
            }
        }
        for (SourceShares shares : SourceShares.of(project)) {
            spread(shares);
            rungs(shares);
        }
    }

    CpModel model() {
        return model;
    }

    /**
     * Makes peaks, deviations, boards and racks small by their weights; gives one unit of that in ampere-equivalents.
     *
     * @param fewestBoards that every plan uses at least
     */
    double minimize(int fewestBoards) {
        ObjectiveWeights weights = project.objective();
        LinearExprBuilder sum = LinearExpr.newBuilder();
        peaks.values().forEach(peak -> sum.addTerm(peak, COMMON * ExactModelUnits.weight(weights.peakInrush())));
        boards.cost(sum, weights, fewestBoards, ExactModelUnits.PER_AMP * COMMON);
        sum.add(deviations.build());
        racks(sum, weights);
        model.minimize(sum.build());
        return 1.0 / (ExactModelUnits.PER_AMP * ExactModelUnits.PER_WEIGHT * COMMON);
    }

    /** A multiple of one, two and three phases: deviations times this are whole numbers. */
    private static final long COMMON = 6;

    private void choose(Load load) {
        List<Choice> own = seats.of(load).stream()
                .map(seat -> new Choice(seat, model.newBoolVar("")))
                .toList();
        if (own.isEmpty()) {
            throw new Unfit("load '" + load.id() + "' fits nowhere");
        }
        choices.put(load.id(), own);
        model.addExactlyOne(own.stream().map(Choice::taken).toArray(BoolVar[]::new));
    }

    /** What is behind a contactor sits in the panel of the load that it is for. */
    private void stayTogether(Load load) {
        load.comesWith().ifPresent(lead -> samePanel(lead, load.id()));
    }

    private void sameGroupsTogether() {
        Map<String, String> first = new HashMap<>();
        for (Load load : loads) {
            boolean isTogether = load.switched()
                    && load.shutdownGroup()
                            .flatMap(index::group)
                            .filter(group -> group.samePanel())
                            .isPresent();
            if (isTogether) {
                String before = first.putIfAbsent(load.shutdownGroup().get(), load.id());
                if (before != null) {
                    samePanel(before, load.id());
                }
            }
        }
    }

    private void samePanel(String one, String other) {
        for (int panel = 0; panel < project.panels().size(); panel++) {
            model.addEquality(inPanel(one, panel), inPanel(other, panel));
        }
    }

    private LinearExpr inPanel(String load, int panel) {
        return ExactModelUnits.sum(choices.get(load).stream()
                .filter(choice -> choice.seat().panel() == panel)
                .map(Choice::taken)
                .toList());
    }

    private void keepRoom() {
        Map<String, List<DistributionRoom.Seated>> ways = new HashMap<>();
        choices.forEach((load, own) -> ways.put(
                load,
                own.stream()
                        .map(each -> new DistributionRoom.Seated(
                                each.seat().panel(), each.seat().phases(), each.taken()))
                        .toList()));
        new DistributionRoom(model, project, seats.distribution(), loads).keep(ways);
    }

    private void reach(Load load) {
        for (int panel = 0; panel < project.panels().size(); panel++) {
            int at = panel;
            if (choices.get(load.id()).stream().anyMatch(each -> each.seat().panel() == at)) {
                boards.reach(load, project.panels().get(panel).id(), inPanel(load.id(), panel));
            }
        }
    }

    // ---- peaks

    /**
     * Rungs of the peak of a source, each at least as high as what one output closes there alone. Each is taken where one of
     * those, or a higher rung, is.
     */
    private void rungs(SourceShares shares) {
        Map<String, Double> alone = shares.aloneAmps();
        List<Load> rising = loads.stream()
                .filter(load -> alone.containsKey(load.id()))
                .sorted(Comparator.comparingDouble((Load load) -> alone.get(load.id()))
                        .thenComparing(Load::id))
                .toList();
        LinearExprBuilder sum = LinearExpr.newBuilder();
        BoolVar below = null;
        long height = 0;
        for (Load load : rising) {
            BoolVar rung = model.newBoolVar("");
            for (Choice choice : choices.get(load.id())) {
                if (choice.seat().parts().containsKey(shares.source())) {
                    model.addImplication(choice.taken(), rung);
                }
            }
            if (below != null) {
                model.addImplication(rung, below);
            }
            long amps = ExactModelUnits.amps(alone.get(load.id()));
            sum.addTerm(rung, amps - height);
            below = rung;
            height = amps;
        }
        model.addGreaterOrEqual(peaks.get(shares.source()), sum.build());
    }

    /** What is spread over time: a weighted mean of instants bears at least what loads cost at their cheapest ones. */
    private void spread(SourceShares shares) {
        Point source = points.get(shares.source());
        model.addGreaterOrEqual(peaks.get(source.index()), ExactModelUnits.amps(shares.leastAmps()));
        for (Phase phase : source.system().phases()) {
            LinearExprBuilder sum = LinearExpr.newBuilder();
            for (Load load : loads) {
                double amps = shares.ampsByLoad().getOrDefault(load.id(), 0.0);
                for (Choice choice : choices.get(load.id())) {
                    double part = choice.seat().part(source.index(), phase);
                    if (part > 0 && amps > 0) {
                        sum.addTerm(choice.taken(), ExactModelUnits.amps(part * amps));
                    }
                }
            }
            model.addGreaterOrEqual(peaks.get(source.index()), sum.build());
        }
    }

    private void bear(Point point, boolean isSource) {
        IntVar peak = model.newIntVar(0, LARGEST, "");
        limits.get(point.index())
                .inrushLimitAmps()
                .ifPresent(limit -> model.addLessOrEqual(peak, ExactModelUnits.amps(limit) + loads.size()));
        if (isSource) {
            peaks.put(point.index(), peak);
        }
        for (Phase phase : point.system().phases()) {
            List<Item> items = items(point.index(), phase);
            if (project.hasClocks()) {
                bearClocks(peak, items);
            } else {
                bearOneClock(peak, items);
            }
            alone(peak, items);
        }
    }

    private List<Item> items(int node, Phase phase) {
        List<Item> items = new ArrayList<>();
        for (Load load : loads) {
            Map<Double, List<BoolVar>> byPart = choices.get(load.id()).stream()
                    .filter(choice -> choice.seat().part(node, phase) > 0)
                    .collect(Collectors.groupingBy(
                            choice -> choice.seat().part(node, phase),
                            LinkedHashMap::new,
                            Collectors.mapping(Choice::taken, Collectors.toList())));
            byPart.forEach((part, taken) -> items.add(new Item(load, part, anyOf(taken))));
        }
        return items;
    }

    private BoolVar anyOf(List<BoolVar> taken) {
        if (taken.size() == 1) {
            return taken.get(0);
        }
        BoolVar any = model.newBoolVar("");
        model.addEquality(ExactModelUnits.sum(taken), any);
        return any;
    }

    private void bearOneClock(IntVar peak, List<Item> items) {
        LinearExprBuilder all = LinearExpr.newBuilder();
        items.forEach(item -> all.addTerm(item.there(), base(item)));
        model.addGreaterOrEqual(peak, all.build());
        List<Item> standing =
                items.stream().filter(item -> !item.load().switched()).toList();
        LinearExprBuilder found = LinearExpr.newBuilder();
        standing.forEach(item -> found.addTerm(item.there(), base(item)));
        for (Optional<String> system : systems()) {
            climb(peak, of(system, items), found.build());
        }
    }

    /** One at a time, or each by itself: P of the system that starts, on top of what the others draw in use. */
    private void bearClocks(IntVar peak, List<Item> items) {
        LinearExprBuilder inUse = LinearExpr.newBuilder();
        items.forEach(item -> inUse.addTerm(item.there(), use(item)));
        model.addGreaterOrEqual(peak, inUse.build());
        boolean anyAtOnce = project.overlap() == Overlap.ANY;
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Optional<String> system : systems()) {
            List<Item> own = of(system, items);
            if (anyAtOnce) {
                IntVar most = model.newIntVar(0, LARGEST, "");
                LinearExprBuilder used = LinearExpr.newBuilder();
                own.forEach(item -> used.addTerm(item.there(), use(item)));
                model.addGreaterOrEqual(most, used.build());
                climb(most, own, LinearExpr.constant(0));
                sum.add(most);
            } else {
                LinearExprBuilder others = LinearExpr.newBuilder();
                items.stream()
                        .filter(item -> !own.contains(item))
                        .forEach(item -> others.addTerm(item.there(), use(item)));
                climb(peak, own, others.build());
            }
        }
        if (anyAtOnce) {
            items.stream()
                    .filter(item -> !item.load().switched())
                    .forEach(item -> sum.addTerm(item.there(), use(item)));
            model.addGreaterOrEqual(peak, sum.build());
        }
    }

    private List<Optional<String>> systems() {
        return project.systems().isEmpty()
                ? List.of(Optional.empty())
                : project.systems().stream()
                        .map(SwitchedSystem::id)
                        .map(Optional::of)
                        .toList();
    }

    private static List<Item> of(Optional<String> system, List<Item> items) {
        return items.stream()
                .filter(item -> item.load().switched()
                        && (system.isEmpty() || item.load().system().equals(system)))
                .toList();
    }

    /** @param found what every one of them finds there */
    private void climb(IntVar peak, List<Item> own, LinearExpr found) {
        if (!tellsRolesApart) {
            climb(peak, own, List.of(), found);
            return;
        }
        List<Item> earlier = new ArrayList<>();
        for (Role role : Role.values()) {
            List<Item> those =
                    own.stream().filter(item -> item.load().role() == role).toList();
            climb(peak, those, earlier, found);
            earlier.addAll(those);
        }
    }

    private void climb(IntVar peak, List<Item> own, List<Item> earlier, LinearExpr found) {
        List<Item> falling = new ArrayList<>(own);
        falling.sort(Comparator.comparingLong(DistributionLadder::excess).reversed());
        LinearExprBuilder bases = LinearExpr.newBuilder().add(found);
        earlier.forEach(item -> bases.addTerm(item.there(), base(item)));
        BoolVar any = null;
        for (Item item : falling) {
            bases.addTerm(item.there(), base(item));
            any = either(any, item.there());
            LinearExprBuilder sum = LinearExpr.newBuilder().add(bases.build());
            sum.addTerm(any, excess(item));
            model.addGreaterOrEqual(peak, sum.build());
        }
    }

    /** True at least where one of the two is. */
    private BoolVar either(BoolVar before, BoolVar itself) {
        if (before == null) {
            return itself;
        }
        BoolVar any = model.newBoolVar("");
        model.addImplication(itself, any);
        model.addImplication(before, any);
        return any;
    }

    /**
     * What one contactor closes comes on at one instant: base and excess of all of it. It finds what is never switched,
     * what earlier roles of its system draw, and what other systems do.
     */
    private void alone(IntVar peak, List<Item> items) {
        Map<String, List<Item>> together = new LinkedHashMap<>();
        Map<String, Role> roles = new HashMap<>();
        Set<String> several = new HashSet<>();
        for (Item item : items) {
            Load load = item.load();
            if (load.switched()) {
                String lead = load.comesWith().orElse(load.id());
                together.computeIfAbsent(lead, any -> new ArrayList<>()).add(item);
                roles.merge(lead, load.role(), (one, other) -> one.compareTo(other) > 0 ? one : other);
                if (!lead.equals(load.id())) {
                    several.add(lead);
                }
            }
        }
        together.keySet().retainAll(several);
        together.forEach((lead, own) -> {
            LinearExprBuilder sum = LinearExpr.newBuilder();
            own.forEach(item -> sum.addTerm(item.there(), base(item) + excess(item)));
            Optional<String> system = own.get(0).load().system();
            for (Item item : items) {
                boolean isOther = project.hasClocks() && !item.load().system().equals(system);
                if (!item.load().switched() || isOther) {
                    sum.addTerm(item.there(), project.hasClocks() ? use(item) : base(item));
                } else if (tellsRolesApart
                        && !own.contains(item)
                        && item.load().system().equals(system)
                        && item.load().role().compareTo(roles.get(lead)) < 0) {
                    sum.addTerm(item.there(), base(item));
                }
            }
            model.addGreaterOrEqual(peak, sum.build());
        });
    }

    private static long base(Item item) {
        return ExactModelUnits.amps(
                item.part() * InrushEnvelope.of(item.load(), 0).baseAmps());
    }

    private static long excess(Item item) {
        return ExactModelUnits.amps(
                item.part() * InrushEnvelope.of(item.load(), 0).excessAmps());
    }

    private long use(Item item) {
        double amps = Math.sqrt(2) * Math.max(item.load().idleAmps(), scenes.mostAmps(item.load()));
        return ExactModelUnits.amps(item.part() * amps);
    }

    // ---- running currents

    /** Whether a node's running currents are sums of its loads': a delta takes off what opposes. */
    private boolean carriesPlainSums(Point node) {
        return points.stream().noneMatch(point -> isDelta(point) && isBelow(point, node.index()));
    }

    private static boolean isDelta(Point point) {
        return point.node()
                .flatMap(each -> each.transformer())
                .filter(each -> each.connection() == TransformerConnection.DELTA_WYE)
                .isPresent();
    }

    private boolean isBelow(Point point, int node) {
        int at = point.parent();
        while (at >= 0 && at != node) {
            at = points.get(at).parent();
        }
        return at == node;
    }

    /** Ratings in every scene, and the mean of the deviations. */
    private void run(Point point) {
        NodeLimits limit = limits.get(point.index());
        List<InScene> all = scenes.scenes();
        int phases = limit.phases().size();
        long weight = weightOf(point);
        for (InScene scene : all) {
            List<LinearExpr> sums = new ArrayList<>();
            LinearExprBuilder total = LinearExpr.newBuilder();
            for (Phase phase : limit.phases()) {
                LinearExprBuilder sum = LinearExpr.newBuilder();
                for (Load load : loads) {
                    double amps = scene.runningAmps().get(load.id());
                    for (Choice choice : choices.get(load.id())) {
                        double part = choice.seat().part(point.index(), phase);
                        if (part > 0 && amps > 0) {
                            sum.addTerm(choice.taken(), ExactModelUnits.amps(part * amps));
                        }
                    }
                }
                model.addLessOrEqual(sum.build(), ExactModelUnits.amps(allowedAmps(point, limit)) + loads.size());
                sums.add(sum.build());
                total.add(sum.build());
            }
            long share = (long) Math.floor(weight * scene.share());
            if (share > 0 && phases > 1) {
                IntVar timesPhases = model.newIntVar(0, phases * LARGEST, "");
                // Each sum is rounded down by less than a unit a load, so a difference by no more than that.
                for (LinearExpr sum : sums) {
                    LinearExprBuilder over = LinearExpr.newBuilder();
                    over.addTerm(sum, phases).addTerm(total.build(), -1);
                    model.addGreaterOrEqual(timesPhases, over.build());
                    LinearExprBuilder under = LinearExpr.newBuilder();
                    under.addTerm(sum, -phases).addTerm(total.build(), 1);
                    model.addGreaterOrEqual(timesPhases, under.build());
                }
                long slack = (long) phases * 2 * loads.size();
                IntVar proven = model.newIntVar(0, phases * LARGEST, "");
                LinearExprBuilder less = LinearExpr.newBuilder();
                less.add(timesPhases).add(-slack);
                model.addGreaterOrEqual(proven, less.build());
                deviations.addTerm(proven, COMMON / phases * share);
            }
        }
    }

    /** In a panel, less what is to be left free. */
    private double allowedAmps(Point point, NodeLimits limit) {
        double spare = point.panel()
                .flatMap(project::spareIn)
                .map(Spare::runningPercent)
                .orElse(0.0);
        return limit.continuousAmps() * (1 - spare / 100);
    }

    private long weightOf(Point point) {
        ObjectiveWeights weights = project.objective();
        boolean isSource = point.index() == 0 || point.isFurtherSource();
        return ExactModelUnits.weight(
                point.panel().isPresent()
                        ? weights.panelImbalance()
                        : isSource ? weights.supplyImbalance() : weights.nodeImbalance());
    }

    // ---- racks

    /** Panels that each rack's loads sit in beyond the first. */
    private void racks(LinearExprBuilder sum, ObjectiveWeights weights) {
        long weight = ExactModelUnits.weight(weights.rackPanels());
        if (weight == 0) {
            return;
        }
        long units = weight * ExactModelUnits.PER_AMP * COMMON;
        Map<String, List<Load>> racks = new LinkedHashMap<>();
        loads.forEach(load -> load.rack()
                .ifPresent(rack ->
                        racks.computeIfAbsent(rack, any -> new ArrayList<>()).add(load)));
        racks.forEach((rack, members) -> {
            for (int panel = 0; panel < project.panels().size(); panel++) {
                BoolVar used = model.newBoolVar("");
                for (Load load : members) {
                    for (Choice choice : choices.get(load.id())) {
                        if (choice.seat().panel() == panel) {
                            model.addImplication(choice.taken(), used);
                        }
                    }
                }
                sum.addTerm(used, units);
            }
            sum.add(-units);
        });
    }
}
