package evenrise.solver.bounds;

import evenrise.model.check.ProjectChecks;
import evenrise.model.project.Board;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.BoardType;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.GroupSeating;
import evenrise.model.project.Load;
import evenrise.model.project.NodeSource;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.OffTiming;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.OnEmergency;
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
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.Spare;
import evenrise.model.project.Supply;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;

/** Plants of two to five loads with every part by chance, so small that every plan of them can be looked at. */
final class TinyPlant {
    private static final double ROOM = 500;
    private static final double VOLTS = 120;
    private static final String GROUP = "G";

    private final Random random;
    private final List<String> systems = new ArrayList<>();
    private final List<Point> points = new ArrayList<>();
    private final List<Panel> panels = new ArrayList<>();
    private final List<Load> loads = new ArrayList<>();

    private record Point(Optional<String> id, PhaseSystem system) {}

    private TinyPlant(long seed) {
        random = new Random(seed);
    }

    /** The first of a row of draws that is without errors and has at most so many plans. */
    static Project of(long seed, long mostPlans) {
        Project drawn;
        long at = seed * 0x9E3779B97F4A7C15L;
        do {
            drawn = new TinyPlant(at++).draw("tiny-plant-" + seed);
        } while (!ProjectChecks.errors(drawn).isEmpty() || EveryPlantPlan.count(drawn) > mostPlans);
        return drawn;
    }

    private Project draw(String name) {
        PhaseSystem system = oneOf(4) ? PhaseSystem.SPLIT_PHASE : PhaseSystem.THREE_PHASE;
        points.add(new Point(Optional.empty(), system));
        List<DistributionNode> nodes = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            nodes.add(node("N" + i));
        }
        for (int i = 1 + random.nextInt(2); i > 0; i--) {
            panels.add(panel("P" + i));
        }
        for (int i = oneOf(2) ? 0 : 1 + random.nextInt(2); i > 0; i--) {
            systems.add("S" + i);
        }
        List<BoardType> types = List.of(type("T1"), type("T2"));
        List<Board> boards = new ArrayList<>();
        for (int i = 1 + random.nextInt(2); i > 0; i--) {
            boards.add(board("B" + i, boards));
        }
        for (int i = 2 + random.nextInt(4); i > 0; i--) {
            loads.add(load("L" + i, boards));
        }
        var project = Project.builder()
                .name(name)
                .timingToleranceSeconds(oneOf(2) ? 0.05 : 0)
                .supply(Supply.builder()
                        .system(system)
                        .lineToNeutralVolts(VOLTS)
                        .frequencyHertz(60)
                        .ratedAmps(rated())
                        .inrushLimitAmps(inrush())
                        .build())
                .panels(panels)
                .nodes(nodes)
                .boardTypes(types)
                .boards(boards)
                .shutdownGroups(List.of(ShutdownGroup.builder()
                        .id(GROUP)
                        .onEmergency(oneOf(2) ? OnEmergency.DROP : OnEmergency.HOLD)
                        .samePanel(oneOf(3))
                        .build()))
                .loads(loads)
                .systems(systems.stream().map(this::system).toList())
                .overlap(any(Overlap.values()))
                .scenes(oneOf(2) ? List.of() : List.of(scene("full"), scene("night")))
                .spare(oneOf(6) ? Optional.of(spare()) : Optional.empty())
                .objective(weights());
        if (oneOf(2)) {
            project.maxDurationSeconds(0.5 * (1 + random.nextInt(6)));
        }
        return project.build();
    }

    private DistributionNode node(String id) {
        var node = DistributionNode.builder().id(id).ratedAmps(rated()).inrushLimitAmps(inrush());
        if (oneOf(3)) {
            PhaseSystem system = any(PhaseSystem.THREE_PHASE, PhaseSystem.SPLIT_PHASE);
            points.add(new Point(Optional.of(id), system));
            return node.source(Optional.of(NodeSource.builder()
                            .system(system)
                            .lineToNeutralVolts(VOLTS)
                            .frequencyHertz(60)
                            .build()))
                    .build();
        }
        Point above = points.get(random.nextInt(points.size()));
        node.fedFrom(above.id());
        PhaseSystem system = above.system();
        if (!oneOf(4)) {
            TransformerConnection connection = above.system() == PhaseSystem.THREE_PHASE
                    ? any(TransformerConnection.values())
                    : TransformerConnection.SINGLE;
            boolean isSingle = connection == TransformerConnection.SINGLE;
            system = isSingle ? any(PhaseSystem.SPLIT_PHASE, PhaseSystem.SINGLE_PHASE) : PhaseSystem.THREE_PHASE;
            List<Phase> primary = new ArrayList<>(above.system().phases());
            Collections.shuffle(primary, random);
            node.transformer(Optional.of(Transformer.builder()
                    .connection(connection)
                    .primaryPhases(
                            isSingle
                                    ? List.copyOf(primary.subList(0, Math.min(primary.size(), 1 + random.nextInt(2))))
                                    : List.of())
                    .shiftDegrees(oneOf(2) ? 30 : -30)
                    .secondary(Secondary.builder()
                            .system(system)
                            .lineToNeutralVolts(oneOf(3) ? 2 * VOLTS : VOLTS)
                            .build())
                    .build()));
        }
        points.add(new Point(Optional.of(id), system));
        return node.build();
    }

    private Panel panel(String id) {
        Point above = points.get(random.nextInt(points.size()));
        int slots = 2 + random.nextInt(4);
        var panel = Panel.builder()
                .id(id)
                .slots(slots)
                .fedFrom(above.id())
                .ratedAmps(rated())
                .neutralFactor(oneOf(8) ? 0.1 * (1 + random.nextInt(5)) : 1)
                .inrushLimitAmps(inrush())
                .numbering(any(SlotNumbering.values()));
        if (oneOf(6)) {
            panel.reservedSlots(List.of(1 + random.nextInt(slots)));
        }
        if (oneOf(6)) {
            panel.switchedSlots(Optional.of(IntStream.rangeClosed(1, slots)
                    .filter(any -> !oneOf(4))
                    .boxed()
                    .toList()));
        }
        if (oneOf(8)) {
            panel.spare(Optional.of(spare()));
        }
        return panel.build();
    }

    private Spare spare() {
        return Spare.builder()
                .slots(random.nextInt(2))
                .switchedSlots(random.nextInt(2))
                .poles(1 + random.nextInt(2))
                .fits(random.nextInt(2))
                .runningPercent(oneOf(2) ? 0 : 20)
                .build();
    }

    private BoardType type(String id) {
        var type = BoardType.builder()
                .id(id)
                .outputs(1 + random.nextInt(3))
                .emergencyBy(any(EmergencyBy.values()))
                .groups(any(GroupSeating.values()))
                .passesOn(any(PassesOn.values()))
                .off(any(OffTiming.values()))
                .spareOutputs(oneOf(5) ? 1 : 0);
        return oneOf(3)
                ? type.timing(BoardTiming.EACH)
                        .timesSeconds(Optional.of(OfferedTimes.builder()
                                .listed(oneOf(2) ? List.of(0.0, 0.5, 1.2) : List.of(0.3, 0.0))
                                .build()))
                        .build()
                : type.startDelaySeconds(oneOf(2) ? List.of(0.0, 0.5) : List.of(0.25))
                        .stepSeconds(oneOf(2) ? List.of(0.5) : List.of(0.2, 1.0))
                        .build();
    }

    private Board board(String id, List<Board> before) {
        List<String> all = panels.stream().map(Panel::id).toList();
        var board = Board.builder()
                .id(id)
                .type(oneOf(2) ? "T1" : "T2")
                .panel(all.get(random.nextInt(all.size())))
                .reaches(oneOf(6) ? List.of() : all);
        if (!before.isEmpty() && oneOf(2)) {
            board.after(Optional.of(before.get(0).id()));
        }
        if (!systems.isEmpty() && oneOf(3)) {
            board.system(Optional.of(aSystem()));
        }
        return board.build();
    }

    private Load load(String id, List<Board> boards) {
        boolean isSwitched = !oneOf(4);
        double running = (5 + random.nextInt(100)) / 10.0;
        var load = Load.builder()
                .id(id)
                .role(isSwitched ? any(Role.values()) : Role.AUXILIARY)
                .poles(oneOf(6) ? 2 : 1)
                .breakerAmps(20)
                .switched(isSwitched)
                .runningAmps(running)
                .idleAmps(running / (1 + random.nextInt(4)))
                .powerFactor(oneOf(3) ? 0.8 : 1)
                .settleSeconds(random.nextInt(3) * 0.25)
                .inrushHalfMillis(20 + random.nextInt(600))
                .inrushPeakAmps(oneOf(4) ? OptionalDouble.empty() : OptionalDouble.of(random.nextInt(80)));
        if (oneOf(3)) {
            load.rack(Optional.of("R" + random.nextInt(2)));
        }
        if (oneOf(5)) {
            load.panels(List.of(panels.get(random.nextInt(panels.size())).id()));
        }
        if (!systems.isEmpty() && isSwitched) {
            load.system(Optional.of(aSystem()));
        }
        if (isSwitched && oneOf(3)) {
            load.shutdownGroup(Optional.of(GROUP));
        }
        if (!isSwitched) {
            return load.build();
        }
        if (!loads.isEmpty() && oneOf(5)) {
            load.comesAfter(List.of(aLoad().id()));
        }
        return switched(load.build(), boards);
    }

    private Load switched(Load load, List<Board> boards) {
        if (!loads.isEmpty() && oneOf(3)) {
            Load lead = aLoad();
            if (lead.switched() && lead.comesWith().isEmpty() && lead.switchedBy() == SwitchedBy.CONTACTOR) {
                return load.with()
                        .comesWith(Optional.of(lead.id()))
                        .system(Optional.empty())
                        .shutdownGroup(Optional.empty())
                        .build();
            }
        }
        var made = load.with().switchedBy(oneOf(3) ? SwitchedBy.CONTACTOR : SwitchedBy.BREAKER);
        if (oneOf(8)) {
            made.offAfterSeconds(10);
        }
        if (oneOf(10)) {
            made.fixed(FixedPlace.builder()
                    .panel(oneOf(2) ? Optional.of(panels.get(0).id()) : Optional.empty())
                    .board(oneOf(2) ? Optional.of(boards.get(0).id()) : Optional.empty())
                    .output(oneOf(3) ? OptionalInt.of(1) : OptionalInt.empty())
                    .onSeconds(oneOf(2) ? OptionalDouble.of(0.5) : OptionalDouble.empty())
                    .build());
        }
        return made.build();
    }

    private SwitchedSystem system(String id) {
        boolean needs = id.equals("S1") && systems.size() > 1 && oneOf(2);
        return SwitchedSystem.builder()
                .id(id)
                .needs(needs ? List.of("S2") : List.of())
                .build();
    }

    private Scene scene(String id) {
        return Scene.builder()
                .id(id)
                .weight(1 + random.nextInt(2))
                .others(oneOf(2) ? 1 : 0.5)
                .use(List.of(SceneUse.builder()
                        .role(Optional.of(any(Role.values())))
                        .factor(random.nextInt(3) * 0.5)
                        .build()))
                .build();
    }

    private ObjectiveWeights weights() {
        return oneOf(3)
                ? ObjectiveWeights.DEFAULT
                : ObjectiveWeights.builder()
                        .peakInrush(random.nextInt(3))
                        .supplyImbalance(random.nextInt(2))
                        .panelImbalance(0.5 * random.nextInt(3))
                        .nodeImbalance(0.5 * random.nextInt(3))
                        .duration(random.nextInt(4) * 2.5)
                        .boards(random.nextInt(3))
                        .rackPanels(random.nextInt(4))
                        .rackBoards(random.nextInt(4))
                        .rackRows(random.nextInt(2))
                        .move(random.nextInt(2) * 3)
                        .build();
    }

    /** Mostly far above what loads draw, now and then near it. */
    private double rated() {
        return oneOf(10) ? 5 + random.nextInt(40) : ROOM;
    }

    private OptionalDouble inrush() {
        return oneOf(10) ? OptionalDouble.of(30 + random.nextInt(120)) : OptionalDouble.empty();
    }

    private Load aLoad() {
        return loads.get(random.nextInt(loads.size()));
    }

    private String aSystem() {
        return systems.get(random.nextInt(systems.size()));
    }

    private boolean oneOf(int count) {
        return random.nextInt(count) == 0;
    }

    @SafeVarargs
    private <T> T any(T... from) {
        return from[random.nextInt(from.length)];
    }
}
