package evenrise.model.nodal;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;

import evenrise.model.AssignmentBuilder;
import evenrise.model.BoardBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import evenrise.model.project.DipCriterion;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.ReferenceMethod;
import evenrise.model.project.SourceKind;
import evenrise.model.project.SupplySource;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * A plant from a seed, with loads of one, two and three poles, feeders with and without cables, neutrals of several sizes,
 * harmonics, and motors with a low power factor and a long inrush; and a plan that places and switches all of it.
 */
public final class RandomPlant {
    private static final String[] FEEDERS = {"10 AWG", "6 AWG", "2 AWG", "2/0 AWG", "16 mm2", "50 mm2"};
    private static final String[] BRANCHES = {"14 AWG", "12 AWG", "10 AWG", "2.5 mm2", "6 mm2"};

    private final Random random;
    private final boolean hasBranches;
    private final PhaseSystem system;
    private final double volts;
    private final List<PanelBuilder> panels = new ArrayList<>();
    private final List<BoardBuilder> boards = new ArrayList<>();
    private final List<LoadBuilder> loads = new ArrayList<>();
    private final List<AssignmentBuilder> assignments = new ArrayList<>();
    private final Map<Integer, Integer> rowsTaken = new HashMap<>();
    private final Map<Integer, Integer> outputsTaken = new HashMap<>();

    private RandomPlant(long seed) {
        this.hasBranches = hasBranches(seed);
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 77);
        this.system = random.nextInt(4) > 0
                ? PhaseSystem.THREE_PHASE
                : random.nextBoolean() ? PhaseSystem.SPLIT_PHASE : PhaseSystem.SINGLE_PHASE;
        this.volts = system == PhaseSystem.SPLIT_PHASE ? 120 : any(120, 230, 277);
    }

    /** Whether some loads of that plant have a cable of their own. */
    public static boolean hasBranches(long seed) {
        return seed % 2 == 0;
    }

    /** The plan held against its project. */
    public static Layout of(long seed) {
        return new RandomPlant(seed).draw();
    }

    private Layout draw() {
        int count = 1 + random.nextInt(4);
        for (int i = 0; i < count; i++) {
            PanelBuilder panel = aPanel("P" + i).slots(120).sequential().neutralFactor(any(0.5, 1, 1, 2));
            if (random.nextInt(5) > 0) {
                panel.feeder(Feeder.builder()
                        .cable(cable(FEEDERS, 5 + 60 * random.nextDouble()))
                        .build());
            }
            panels.add(panel);
            String[] all = IntStream.range(0, count).mapToObj(k -> "P" + k).toArray(String[]::new);
            boards.add(aBoard("B" + i).type("T").in("P" + i).reaches(all));
        }
        int size = 3 + random.nextInt(12);
        for (int i = 0; i < size; i++) {
            load("L" + i, random.nextInt(count));
        }
        Project project = aProject()
                .supply(aSupply()
                        .system(system)
                        .lineToNeutralVolts(volts)
                        .frequencyHertz(random.nextBoolean() ? 50 : 60)
                        .ratedAmps(400))
                .electrical(Electrical.builder()
                        .practice(Practice.NEC)
                        .source(source())
                        .dipCriteria(List.of(DipCriterion.values()))
                        .build())
                .panels(panels.toArray(PanelBuilder[]::new))
                .boardTypes(aBoardType("T").outputs(64))
                .boards(boards.toArray(BoardBuilder[]::new))
                .loads(loads.toArray(LoadBuilder[]::new))
                .build();
        Plan plan = aPlan().assignments(assignments.toArray(AssignmentBuilder[]::new))
                .build();
        return Layout.of(project, plan);
    }

    private void load(String id, int panel) {
        int poles = 1 + random.nextInt(system.phases().size());
        boolean isMotor = random.nextInt(4) == 0;
        double running = 1 + 25 * random.nextDouble();
        double idle = running * (0.1 + 0.9 * random.nextDouble());
        LoadBuilder load = aLoad(id)
                .poles(poles)
                .runningAmps(running)
                .idleAmps(idle)
                .powerFactor(isMotor ? 0.3 + 0.5 * random.nextDouble() : any(1, 0.98, 0.9, 0.7))
                .thirdHarmonic(isMotor || random.nextBoolean() ? 0 : 0.8 * random.nextDouble())
                .inrushPeakAmps(running * (1 + (isMotor ? 8 : 15) * random.nextDouble()))
                .inrushHalfMillis(isMotor ? 200 + 2000 * random.nextDouble() : 1 + 20 * random.nextDouble());
        if (hasBranches && random.nextBoolean()) {
            load.circuit(Circuit.builder()
                    .cable(cable(BRANCHES, 30 * random.nextDouble()))
                    .build());
        }
        // A row has one slot here, and the phases follow each other.
        int row = rowsTaken.getOrDefault(panel, 1 + random.nextInt(3));
        rowsTaken.put(panel, row + poles + random.nextInt(2));
        AssignmentBuilder assignment = anAssignment(id).at("P" + panel, row);
        if (random.nextInt(4) == 0) {
            load.unswitched();
        } else {
            int board = random.nextInt(3) == 0 ? 0 : panel;
            int output = outputsTaken.merge(board, 1 + random.nextInt(2), Integer::sum);
            assignment.on("B" + board, output);
        }
        loads.add(load);
        assignments.add(assignment);
    }

    private SupplySource source() {
        double xOverR = any(0.5, 1.5, 3, 10);
        return switch (random.nextInt(3)) {
            case 0 ->
                SupplySource.builder()
                        .kind(SourceKind.UTILITY)
                        .faultAmps(500 + 10_000 * random.nextDouble())
                        .xOverR(xOverR)
                        .build();
            case 1 ->
                SupplySource.builder()
                        .kind(SourceKind.TRANSFORMER)
                        .ratedKva(25 + 200 * random.nextDouble())
                        .impedancePercent(2 + 4 * random.nextDouble())
                        .xOverR(xOverR)
                        .build();
            default ->
                SupplySource.builder()
                        .kind(SourceKind.GENERATOR)
                        .ratedKva(60 + 300 * random.nextDouble())
                        .subtransientReactancePercent(8 + 10 * random.nextDouble())
                        .xOverR(20)
                        .build();
        };
    }

    private Cable cable(String[] sizes, double metres) {
        String size = sizes[random.nextInt(sizes.length)];
        return Cable.builder()
                .lengthMetres(metres)
                .size(size)
                .material(ConductorMaterial.COPPER)
                .conduit(random.nextBoolean() ? Conduit.STEEL : Conduit.NONMETALLIC)
                .method(ReferenceMethod.B1)
                .conductorCelsius(size.endsWith("mm2") ? 70 : 75)
                .build();
    }

    private double any(double... values) {
        return values[random.nextInt(values.length)];
    }
}
