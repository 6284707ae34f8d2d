package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.check.ProjectChecks;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.BoardType;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.GroupSeating;
import evenrise.model.project.Load;
import evenrise.model.project.NodeSource;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.OffTiming;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.Overlap;
import evenrise.model.project.Panel;
import evenrise.model.project.PassesOn;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import evenrise.model.project.Secondary;
import evenrise.model.project.Spare;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Projects that use the parts of a plant beyond one supply with panels: those that are asked for, drawn from a seed. */
final class Plantful {
    /** A part that a project may use; each is drawn at will within it. */
    enum Part {
        FEEDERS,
        DELTA_WYE,
        WYE_WYE,
        SINGLE,
        SOURCES,
        ONE_AT_A_TIME,
        TOGETHER,
        ANY_AT_ONCE,
        SCENES,
        EACH_TIMED,
        PASSES_ON,
        EMERGENCY_BY_OUTPUT,
        GROUPS_ANYHOW,
        SPARE_OUTPUTS,
        OFF_DELAYS,
        CONTACTORS,
        RACKS,
        SPARE,
        FIXED_TIMES,
        WEIGHTS,
        LIMITS_FOR_EVENTS
    }

    private static final double[] VOLTS = {120, 127, 230, 277};
    private static final double ROOM = 1e5;
    private static final int SOME_MOVES = 300;

    private final Random random;
    private final Set<Part> parts;
    private final Map<String, List<Assignment>> onBoard = new HashMap<>();
    private Project project;

    private Plantful(Project project, Plan planted, Set<Part> parts, long seed) {
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 77);
        this.parts = parts;
        this.project = project;
        planted.assignments()
                .forEach(each -> each.board()
                        .ifPresent(board -> onBoard.computeIfAbsent(board, any -> new ArrayList<>())
                                .add(each)));
    }

    /** A small project with each of these parts. */
    static Project of(long seed, Set<Part> parts) {
        long at = seed * 1000;
        ARandomProject.Planted planted = ARandomProject.planted(at);
        while (planted.project().boards().size() < 2
                || planted.project().panels().size() < 2
                || planted.project().loads().size() < 8) {
            planted = ARandomProject.planted(++at);
        }
        return of(planted.project(), planted.plan(), seed, parts);
    }

    /** Parts by chance, about so many of a hundred. */
    static Set<Part> some(long seed, int percent) {
        Random random = new Random(seed * 31 + 5);
        Set<Part> parts = EnumSet.noneOf(Part.class);
        for (Part part : Part.values()) {
            if (random.nextInt(100) < percent) {
                parts.add(part);
            }
        }
        return parts;
    }

    /**
     * The same project with these parts.
     *
     * @param planted a plan of it that keeps every rule
     */
    static Project of(Project project, Plan planted, long seed, Set<Part> parts) {
        Project made = new Plantful(project, planted, parts, seed).make();
        assertThat(ProjectChecks.errors(made)).as("seed %d, %s", seed, parts).isEmpty();
        return made;
    }

    private Project make() {
        boards();
        systems();
        contactors();
        waitsWithinSystems();
        tree();
        loads();
        if (has(Part.SCENES)) {
            project = project.withScenes(scenes());
        }
        if (has(Part.SPARE)) {
            spare();
        }
        if (has(Part.WEIGHTS)) {
            project = project.withObjective(weights());
        }
        return has(Part.LIMITS_FOR_EVENTS) ? Eventful.of(limited(), random.nextLong()) : limited();
    }

    private boolean has(Part part) {
        return parts.contains(part);
    }

    private boolean oneOf(int count) {
        return random.nextInt(count) == 0;
    }

    // ---- boards

    private void boards() {
        List<BoardType> types = new ArrayList<>();
        for (BoardType type : project.boardTypes()) {
            types.add(drawn(type, types.isEmpty()));
        }
        if (has(Part.EACH_TIMED) || has(Part.GROUPS_ANYHOW)) { // beside boards of the first kind, some of another
            types.add(types.get(0).with().id("further").build());
            types.set(0, project.boardTypes().get(0));
            List<Board> mixed = new ArrayList<>();
            for (Board board : project.boards()) {
                boolean isFurther = board.type().equals(types.get(0).id()) && random.nextBoolean();
                mixed.add(isFurther ? board.withType("further") : board);
            }
            project = project.withBoards(mixed);
        }
        project = project.withBoardTypes(types);
    }

    private BoardType drawn(BoardType type, boolean isFirst) {
        var drawn = type.with();
        Predicate<Part> draws = part -> has(part) && (isFirst || random.nextBoolean());
        if (draws.test(Part.EACH_TIMED)) {
            drawn.timing(BoardTiming.EACH)
                    .startDelaySeconds(List.of())
                    .stepSeconds(List.of())
                    .timesSeconds(Optional.of(times()));
        }
        if (draws.test(Part.PASSES_ON)) {
            drawn.passesOn(PassesOn.ALL);
        }
        if (draws.test(Part.EMERGENCY_BY_OUTPUT)) {
            drawn.emergencyBy(EmergencyBy.OUTPUT);
        }
        if (draws.test(Part.GROUPS_ANYHOW)) {
            drawn.groups(GroupSeating.ANY);
        }
        if (draws.test(Part.SPARE_OUTPUTS)) {
            drawn.spareOutputs(random.nextInt(Math.min(3, type.outputs())));
        }
        if (draws.test(Part.OFF_DELAYS)) {
            drawn.off(OffTiming.EACH);
        }
        return drawn.build();
    }

    private OfferedTimes times() {
        if (oneOf(4)) { // thousands
            return range(0, 50 + random.nextInt(50), 0.025);
        }
        if (random.nextBoolean()) {
            return range(random.nextInt(2), 5 + random.nextInt(20), random.nextBoolean() ? 0.25 : 0.1);
        }
        boolean isOdd = oneOf(3); // times that share no interval worth a grid
        List<Double> listed = new ArrayList<>(IntStream.range(0, 60)
                .filter(each -> random.nextInt(isOdd ? 8 : 4) == 0 || each == 0)
                .mapToObj(each -> isOdd ? each * 0.25 + random.nextInt(1000) / 1e5 : each * 0.25)
                .toList());
        Collections.shuffle(listed, random);
        return OfferedTimes.builder().listed(listed).build();
    }

    private static OfferedTimes range(double from, double to, double by) {
        return OfferedTimes.builder()
                .from(OptionalDouble.of(from))
                .to(OptionalDouble.of(to))
                .by(OptionalDouble.of(by))
                .build();
    }

    // ---- systems

    private boolean hasSystems() {
        return has(Part.ONE_AT_A_TIME) || has(Part.TOGETHER) || has(Part.ANY_AT_ONCE);
    }

    /** Boards of one chain or one shutdown group serve one system, so that the planted plan keeps the rules. */
    private void systems() {
        if (!hasSystems()) {
            return;
        }
        int count = 1 + random.nextInt(3);
        List<SwitchedSystem> systems = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            List<String> needs = IntStream.range(0, i)
                    .filter(any -> oneOf(2))
                    .mapToObj(each -> "S" + each)
                    .toList();
            systems.add(SwitchedSystem.builder().id("S" + i).needs(needs).build());
        }
        Collections.shuffle(systems, random);
        Map<String, String> together = together();
        Map<String, String> systemOf = new HashMap<>();
        Map<String, String> systemOfBoard = new HashMap<>();
        List<Board> boards = new ArrayList<>();
        for (Board board : project.boards()) {
            String drawn = board.after().map(systemOfBoard::get).orElseGet(() -> "S" + random.nextInt(count));
            String system = systemOf.computeIfAbsent(together.get(board.id()), any -> drawn);
            systemOfBoard.put(board.id(), system);
            boards.add(oneOf(3) ? board.withSystem(Optional.of(system)) : board);
        }
        Map<String, String> systemOfLoad = new HashMap<>();
        onBoard.forEach(
                (board, loads) -> loads.forEach(each -> systemOfLoad.put(each.load(), systemOfBoard.get(board))));
        project = project.with()
                .systems(systems)
                .overlap(
                        has(Part.ONE_AT_A_TIME)
                                ? Overlap.ONE_AT_A_TIME
                                : has(Part.ANY_AT_ONCE) ? Overlap.ANY : Overlap.TOGETHER)
                .boards(boards)
                .build();
        mapLoads(load -> load.switched()
                ? load.withSystem(Optional.of(systemOfLoad.get(load.id())))
                : oneOf(2) ? load : load.withSystem(Optional.of("S" + random.nextInt(count))));
    }

    /** By board, one board that stands for all that are in one chain or switch one shutdown group with it. */
    private Map<String, String> together() {
        Map<String, String> together = new HashMap<>();
        project.boards().forEach(board -> together.put(board.id(), board.id()));
        project.boards().forEach(board -> board.after().ifPresent(first -> join(together, board.id(), first)));
        Map<String, String> boardOfGroup = new HashMap<>();
        onBoard.forEach((board, seated) -> seated.stream()
                .flatMap(each -> load(each.load()).orElseThrow().shutdownGroup().stream())
                .forEach(group -> join(together, board, boardOfGroup.computeIfAbsent(group, any -> board))));
        return together;
    }

    private static void join(Map<String, String> together, String board, String other) {
        String left = together.get(board);
        String kept = together.get(other);
        together.replaceAll((any, standing) -> standing.equals(left) ? kept : standing);
    }

    private void mapLoads(UnaryOperator<Load> change) {
        project = project.withLoads(project.loads().stream().map(change).toList());
    }

    // ---- contactors

    private void contactors() {
        if (!has(Part.CONTACTORS)) {
            return;
        }
        Set<String> leads = new HashSet<>();
        mapLoads(load -> {
            boolean isBehind = load.switched() && oneOf(3);
            if (isBehind) {
                leads.add(load.id());
            }
            return isBehind ? load.withSwitchedBy(SwitchedBy.CONTACTOR) : load;
        });
        List<String> names = new ArrayList<>(leads);
        Collections.sort(names);
        mapLoads(load -> leads.contains(load.id()) || names.isEmpty() || !oneOf(3)
                ? load
                : behind(load, names.get(random.nextInt(names.size()))));
    }

    private void waitsWithinSystems() {
        Map<String, Load> byId = project.loads().stream().collect(Collectors.toMap(Load::id, Function.identity()));
        if (project.hasClocks()) {
            mapLoads(load -> load.withComesAfter(load.comesAfter().stream()
                    .filter(each -> systemOf(byId, load).equals(systemOf(byId, byId.get(each))))
                    .toList()));
        }
    }

    private static Optional<String> systemOf(Map<String, Load> byId, Load load) {
        return load.comesWith().map(byId::get).orElse(load).system();
    }

    private Optional<Load> load(String id) {
        return project.loads().stream().filter(each -> each.id().equals(id)).findFirst();
    }

    private Load behind(Load load, String lead) {
        Load given = load(lead).orElseThrow();
        boolean repeats = oneOf(3);
        return load.with()
                .switched(true)
                .role(oneOf(6) ? load.role() : given.role())
                .comesWith(Optional.of(lead))
                .shutdownGroup(repeats ? given.shutdownGroup() : Optional.empty())
                .system(repeats ? given.system() : Optional.empty())
                .comesAfter(List.of())
                .apartFrom(List.of())
                .panels(given.panels())
                .fixed(given.fixed()
                        .with()
                        .slot(OptionalInt.empty())
                        .board(Optional.empty())
                        .output(OptionalInt.empty())
                        .build())
                .build();
    }

    // ---- distribution

    private boolean hasTree() {
        return has(Part.FEEDERS) || has(Part.DELTA_WYE) || has(Part.WYE_WYE) || has(Part.SINGLE) || has(Part.SOURCES);
    }

    private void tree() {
        if (!hasTree()) {
            return;
        }
        if (has(Part.DELTA_WYE) || has(Part.WYE_WYE)) {
            project = project.withSupply(project.supply().withSystem(PhaseSystem.THREE_PHASE));
        }
        Map<String, PhaseSystem> points =
                new HashMap<>(Map.of("supply", project.supply().system()));
        List<String> names = new ArrayList<>(List.of("supply"));
        List<DistributionNode> nodes = new ArrayList<>();
        List<Part> kinds =
                new ArrayList<>(List.of(Part.SOURCES, Part.DELTA_WYE, Part.WYE_WYE, Part.SINGLE, Part.FEEDERS).stream()
                        .filter(this::has)
                        .toList());
        int asked = kinds.size();
        for (int more = random.nextInt(3); more > 0; more--) {
            kinds.add(kinds.get(random.nextInt(asked)));
        }
        Collections.shuffle(kinds, random);
        List<Panel> panels = new ArrayList<>(project.panels());
        Map<String, Panel> refed = new HashMap<>();
        for (Part kind : kinds) {
            String id = "N" + nodes.size();
            DistributionNode node = node(id, kind, names, points);
            nodes.add(node);
            names.add(id);
            points.put(id, systemOf(node, points));
            if (!panels.isEmpty()) { // something is fed from it
                Panel panel = panels.remove(random.nextInt(panels.size()));
                refed.put(panel.id(), fed(panel, id, points.get(id)));
                if (oneOf(2)) { // and what comes next may be fed from that panel
                    points.put(panel.id(), points.get(id));
                    names.add(panel.id());
                }
            }
        }
        for (Panel panel : panels) {
            String from = names.get(random.nextInt(names.size()));
            boolean stays = from.equals("supply") || from.equals(panel.id());
            refed.put(
                    panel.id(),
                    stays ? fed(panel, "supply", points.get("supply")) : fed(panel, from, points.get(from)));
        }
        project = project.with()
                .nodes(nodes)
                .panels(project.panels().stream()
                        .map(each -> refed.get(each.id()))
                        .toList())
                .build();
        Distribution distribution = Distribution.of(project);
        int most = project.panels().stream()
                .mapToInt(each -> distribution.of(each).system().phases().size())
                .min()
                .orElseThrow();
        mapLoads(load -> loosened(load.poles() <= most ? load : load.withPoles(most)));
        project = project.withBoards(project.boards().stream()
                .map(board -> oneOf(4)
                        ? board
                        : board.withReaches(
                                project.panels().stream().map(Panel::id).toList()))
                .toList());
        Set<Double> volts = project.panels().stream()
                .map(each -> distribution.of(each).lineToNeutralVolts())
                .collect(Collectors.toSet());
        mapLoads(load -> voltages(load, distribution, volts.size() > 1));
    }

    /** Most of what a load states of its place would have no way out in another distribution. */
    private Load loosened(Load load) {
        boolean staysFixed = oneOf(8);
        return load.with()
                .samePhaseAs(oneOf(8) ? load.samePhaseAs() : List.of())
                .apartFrom(oneOf(4) ? load.apartFrom() : List.of())
                .fixed(
                        staysFixed
                                ? load.fixed()
                                : load.fixed()
                                        .with()
                                        .panel(Optional.empty())
                                        .slot(OptionalInt.empty())
                                        .build())
                .panels(oneOf(3) && (load.comesWith().isEmpty()) ? load.panels() : List.of())
                .build();
    }

    /** Every load may sit somewhere at its voltage; those behind one contactor all say the same. */
    private Load voltages(Load load, Distribution distribution, boolean differ) {
        boolean isBound = !load.panels().isEmpty() || load.fixed().panel().isPresent();
        if (!differ || isBound && oneOf(2)) {
            return !differ && oneOf(4)
                    ? stated(load, distribution, project.panels().get(0))
                    : load;
        }
        List<String> may = load.fixed().panel().map(List::of).orElse(load.panels());
        List<Panel> choice = project.panels().stream()
                .filter(each -> may.isEmpty() || may.contains(each.id()))
                .toList();
        Load lead = load.comesWith().flatMap(this::load).orElse(load);
        int at = lead.shutdownGroup().orElse(lead.id()).hashCode();
        return stated(load, distribution, choice.get(Math.floorMod(at, choice.size())));
    }

    private Load stated(Load load, Distribution distribution, Panel panel) {
        double volts = distribution.of(panel).lineToNeutralVolts() * (1 + 0.03 * random.nextDouble());
        return load.withLineToNeutralVolts(OptionalDouble.of(volts));
    }

    private Panel fed(Panel panel, String from, PhaseSystem system) {
        List<Phase> rotation = new ArrayList<>(system.phases());
        Collections.shuffle(rotation, random);
        if (oneOf(4) && rotation.size() > 1) {
            rotation.remove(0);
        }
        return panel.with()
                .fedFrom(from.equals("supply") && oneOf(2) ? Optional.empty() : Optional.of(from))
                .phaseRotation(oneOf(3) ? List.of() : rotation)
                .continuousFraction(
                        oneOf(3) ? OptionalDouble.of(0.5 + 0.5 * random.nextDouble()) : OptionalDouble.empty())
                .build();
    }

    private DistributionNode node(String id, Part kind, List<String> names, Map<String, PhaseSystem> points) {
        var node = DistributionNode.builder()
                .id(id)
                .ratedAmps(ROOM)
                .neutralFactor(0.5 + 2 * random.nextDouble())
                .continuousFraction(oneOf(3) ? OptionalDouble.of(0.9) : OptionalDouble.empty());
        if (kind == Part.SOURCES) {
            PhaseSystem system = PhaseSystem.values()[random.nextInt(3)];
            return node.source(Optional.of(NodeSource.builder()
                            .system(system)
                            .lineToNeutralVolts(anyVolts())
                            .frequencyHertz(60)
                            .build()))
                    .build();
        }
        boolean isThree = kind == Part.DELTA_WYE || kind == Part.WYE_WYE;
        List<String> above = names.stream()
                .filter(each -> !isThree || points.get(each) == PhaseSystem.THREE_PHASE)
                .toList();
        String from = above.get(random.nextInt(above.size()));
        node.fedFrom(from.equals("supply") && oneOf(2) ? Optional.empty() : Optional.of(from));
        return kind == Part.FEEDERS
                ? node.build()
                : node.transformer(Optional.of(transformer(kind, points.get(from))))
                        .build();
    }

    private Transformer transformer(Part kind, PhaseSystem above) {
        List<Phase> primary = new ArrayList<>(above.phases());
        Collections.shuffle(primary, random);
        boolean isSingle = kind == Part.SINGLE;
        return Transformer.builder()
                .connection(
                        isSingle
                                ? TransformerConnection.SINGLE
                                : kind == Part.WYE_WYE
                                        ? TransformerConnection.WYE_WYE
                                        : TransformerConnection.DELTA_WYE)
                .primaryPhases(
                        isSingle && !oneOf(3)
                                ? List.copyOf(primary.subList(0, Math.min(primary.size(), 1 + random.nextInt(2))))
                                : List.of())
                .shiftDegrees(random.nextBoolean() ? 30 : -30)
                .secondary(Secondary.builder()
                        .system(
                                isSingle
                                        ? random.nextBoolean() ? PhaseSystem.SPLIT_PHASE : PhaseSystem.SINGLE_PHASE
                                        : PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(anyVolts())
                        .build())
                .build();
    }

    private double anyVolts() {
        return random.nextBoolean() ? project.supply().lineToNeutralVolts() : VOLTS[random.nextInt(VOLTS.length)];
    }

    private static PhaseSystem systemOf(DistributionNode node, Map<String, PhaseSystem> points) {
        return node.source()
                .map(NodeSource::system)
                .or(() -> node.transformer().map(each -> each.secondary().system()))
                .orElseGet(() -> points.get(node.fedFrom().orElse("supply")));
    }

    // ---- loads

    private void loads() {
        Map<String, Assignment> said = new HashMap<>();
        onBoard.values().forEach(all -> all.forEach(each -> said.put(each.load(), each)));
        Map<String, BoardType> typeOf = new HashMap<>();
        project.boards()
                .forEach(board -> project.boardTypes().stream()
                        .filter(type -> type.id().equals(board.type()))
                        .forEach(type -> typeOf.put(board.id(), type)));
        mapLoads(load -> {
            var drawn = load.with();
            if (has(Part.RACKS) && !oneOf(3)) {
                drawn.rack(Optional.of("R" + random.nextInt(3)));
            }
            Assignment seat = said.get(load.id());
            boolean hasOutput = seat != null && load.comesWith().isEmpty();
            if (has(Part.OFF_DELAYS) && hasOutput && oneOf(3)) {
                boolean canWait = typeOf.get(seat.board().orElseThrow()).off() == OffTiming.EACH;
                drawn.offAfterSeconds(canWait ? 1 + random.nextInt(90) : 0);
            }
            if (has(Part.FIXED_TIMES) && hasOutput && oneOf(4)) {
                double on =
                        oneOf(8) ? random.nextInt(40) * 0.25 : seat.onSeconds().orElseThrow();
                drawn.fixed(load.fixed().with().onSeconds(OptionalDouble.of(on)).build());
            }
            return drawn.build();
        });
    }

    private List<Scene> scenes() {
        List<Scene> scenes = new ArrayList<>();
        for (int i = 1 + random.nextInt(3); i > 0; i--) {
            List<SceneUse> uses = new ArrayList<>();
            for (int k = random.nextInt(5); k > 0; k--) {
                uses.add(use());
            }
            scenes.add(Scene.builder()
                    .id("scene " + i)
                    .weight(scenes.isEmpty() || !oneOf(4) ? 1 + random.nextInt(3) : 0)
                    .others(oneOf(2) ? 1 : random.nextDouble())
                    .use(uses)
                    .build());
        }
        return scenes;
    }

    private SceneUse use() {
        var use = SceneUse.builder().factor(oneOf(4) ? 0 : random.nextDouble());
        if (oneOf(2)) {
            use.role(Optional.of(Role.values()[random.nextInt(3)]));
        }
        if (oneOf(3) && !project.shutdownGroups().isEmpty()) {
            use.group(Optional.of(any(project.shutdownGroups()).id()));
        }
        if (oneOf(3) && !project.systems().isEmpty()) {
            use.system(Optional.of(any(project.systems()).id()));
        }
        if (oneOf(3)) {
            use.loads(Optional.of(project.loads().stream()
                    .map(Load::id)
                    .filter(id -> oneOf(3))
                    .toList()));
        }
        return use.build();
    }

    private void spare() {
        project = project.withSpare(oneOf(3) ? Optional.empty() : Optional.of(drawnSpare()))
                .withPanels(project.panels().stream()
                        .map(each -> oneOf(2) ? each : each.withSpare(Optional.of(drawnSpare())))
                        .toList());
    }

    private Spare drawnSpare() {
        return Spare.builder()
                .slots(random.nextInt(6))
                .switchedSlots(random.nextInt(4))
                .poles(1 + random.nextInt(3))
                .fits(random.nextInt(3))
                .runningPercent(oneOf(2) ? 0 : random.nextInt(20))
                .build();
    }

    private ObjectiveWeights weights() {
        return ObjectiveWeights.builder()
                .peakInrush(1)
                .supplyImbalance(random.nextDouble())
                .panelImbalance(random.nextDouble())
                .duration(random.nextDouble())
                .boards(random.nextDouble() * 10)
                .nodeImbalance(random.nextDouble())
                .rackPanels(random.nextDouble() * 10)
                .rackBoards(random.nextDouble() * 10)
                .rackRows(random.nextDouble())
                .move(random.nextDouble() * 5)
                .build();
    }

    private <T> T any(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }

    // ---- limits

    /** Ratings and inrush limits a little above or below what a plan reaches, where the tree or the times differ. */
    private Project limited() {
        boolean movesCurrents =
                hasTree() || hasSystems() || has(Part.SCENES) || has(Part.EACH_TIMED) || has(Part.CONTACTORS);
        if (!movesCurrents) {
            return project;
        }
        Project open = project.with()
                .supply(project.supply().withRatedAmps(ROOM).withInrushLimitAmps(OptionalDouble.empty()))
                .panels(project.panels().stream()
                        .map(each -> each.withRatedAmps(ROOM).withInrushLimitAmps(OptionalDouble.empty()))
                        .toList())
                .build();
        PlanningRequest request = new PlanningRequest(open, Optional.empty(), new Budget.Moves(SOME_MOVES), 1, 1);
        Plan first =
                Plans.judged(open, new Planner(request, progress -> {}).plan().plan());
        Map<String, NodeFigures> figures = Referee.judge(open, first).nodes().stream()
                .collect(Collectors.toMap(NodeFigures::node, Function.identity()));
        double fraction = project.supply().continuousFraction();
        return project.with()
                .supply(project.supply()
                        .with()
                        .ratedAmps(rated(
                                figures.get(NodeFigures.SUPPLY),
                                fraction,
                                project.supply().neutralFactor()))
                        .inrushLimitAmps(inrush(figures.get(NodeFigures.SUPPLY)))
                        .build())
                .panels(project.panels().stream()
                        .map(each -> each.with()
                                .ratedAmps(rated(
                                        figures.get(each.id()),
                                        each.continuousFractionUnder(project.supply()),
                                        each.neutralFactor()))
                                .inrushLimitAmps(inrush(figures.get(each.id())))
                                .build())
                        .toList())
                .nodes(project.nodes().stream()
                        .map(each -> each.with()
                                .ratedAmps(rated(
                                        figures.get(each.id()),
                                        each.continuousFraction().orElse(fraction),
                                        each.neutralFactor()))
                                .inrushLimitAmps(inrush(figures.get(each.id())))
                                .build())
                        .toList())
                .build();
    }

    private double rated(NodeFigures figures, double fraction, double neutralFactor) {
        double running = figures.runningAmps().values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
        double needed = Math.max(running / fraction, figures.neutralAmps() / neutralFactor);
        return Math.max(1, needed * about());
    }

    private OptionalDouble inrush(NodeFigures figures) {
        double peak =
                figures.peaks().stream().mapToDouble(each -> each.amps()).max().orElse(0);
        return oneOf(3) ? OptionalDouble.empty() : OptionalDouble.of(Math.max(1, peak * about()));
    }

    private double about() {
        return oneOf(12) ? 0.9 + 0.15 * random.nextDouble() : 1.1 + 0.6 * random.nextDouble();
    }
}
