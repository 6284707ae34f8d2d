package evenrise.solver.exact;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;

import evenrise.model.BoardBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.SupplyBuilder;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Projects of 8 to 12 loads from a seed, tight enough for every kind of rule to matter, small enough to be solved
 * exactly. Running currents are tenths of an ampere, times are quarters of a second, weights are tenths. Nothing makes
 * sure that a plan exists: the exact model says so.
 */
final class ExactModelProject {
    private static final double FRACTION = 0.8;

    private final Random random;
    private final PhaseSystem system;
    private final int count;
    private final List<Draft> drafts = new ArrayList<>();
    private final boolean groupOverBoards;

    /** A load with the facts that the rest of the project is drawn from. */
    private record Draft(LoadBuilder load, boolean switched, Role role, int poles, double running, double peak) {}

    private ExactModelProject(long seed) {
        random = new Random(seed * 0x9E3779B97F4A7C15L + 7);
        system = random.nextInt(3) == 0 ? PhaseSystem.SPLIT_PHASE : PhaseSystem.THREE_PHASE;
        count = 8 + random.nextInt(5);
        groupOverBoards = random.nextInt(3) == 0;
    }

    static Project of(long seed) {
        return new ExactModelProject(seed).project("exact-" + seed);
    }

    private Project project(String name) {
        int unswitched = 1 + random.nextInt(2);
        for (int i = 0; i < count; i++) {
            draw(i, i >= count - unswitched);
        }
        group();
        relate();
        ProjectBuilder project = aProject().name(name).timingToleranceSeconds(random.nextBoolean() ? 0.05 : 0);
        if (random.nextBoolean()) {
            project.maxDurationSeconds(2.5 + random.nextInt(6) * 0.25);
        }
        double perPhase =
                drafts.stream().mapToDouble(it -> it.running * it.poles).sum()
                        / system.phases().size();
        double peak = drafts.stream().mapToDouble(Draft::peak).max().orElse(0);
        SupplyBuilder supply = aSupply()
                .system(system)
                .continuousFraction(FRACTION)
                .ratedAmps(Math.ceil(perPhase * 1.1 / FRACTION))
                .neutralFactor((1 + random.nextInt(4)) / 10.0);
        if (random.nextBoolean()) {
            supply.inrushLimitAmps(Math.ceil(perPhase * 1.1 + peak));
        }
        project.supply(supply)
                .panels(panel("P1", perPhase, peak), panel("P2", perPhase, peak))
                .objective(ObjectiveWeights.builder()
                        .peakInrush(1)
                        .supplyImbalance(random.nextInt(4) * 0.5)
                        .panelImbalance(0.5)
                        .duration(0.1 * random.nextInt(9))
                        .boards(any(0, 4))
                        .build());
        boards(project);
        drafts.forEach(it -> project.loads(it.load));
        return project.build();
    }

    private PanelBuilder panel(String id, double perPhase, double peak) {
        int slots = 12 + random.nextInt(3);
        PanelBuilder panel = aPanel(id)
                .slots(slots)
                .ratedAmps(Math.ceil(perPhase * any(60, 70, 85) / 100 / FRACTION))
                .neutralFactor(any(3, 5, 10) / 10.0)
                .reservedSlots(1 + random.nextInt(slots));
        if (random.nextBoolean()) {
            panel.sequential();
        }
        if (random.nextBoolean()) {
            List<Phase> rotation = new ArrayList<>(system.phases());
            Collections.shuffle(rotation, random);
            panel.phaseRotation(rotation);
        }
        if (random.nextBoolean()) {
            int without = 1 + random.nextInt(3);
            panel.switchedSlots(
                    IntStream.rangeClosed(1 + without, slots).boxed().toList());
        }
        if (random.nextBoolean()) {
            panel.inrushLimitAmps(Math.ceil(perPhase * 0.6 + peak));
        }
        return panel;
    }

    /** Three boards or, where a group is to need two, four of few outputs; one follows another. */
    private void boards(ProjectBuilder project) {
        project.boardTypes(
                aBoardType("small")
                        .outputs(groupOverBoards ? 2 : 4)
                        .startDelaySeconds(0, 0.5)
                        .stepSeconds(0.25, 0.5),
                aBoardType("large")
                        .outputs(groupOverBoards ? 3 : 5)
                        .startDelaySeconds(0.25, 1)
                        .stepSeconds(0.25, 0.75));
        int boards = groupOverBoards ? 5 : 3;
        for (int i = 1; i <= boards; i++) {
            String home = any(1, 2) == 1 ? "P1" : "P2";
            BoardBuilder board =
                    aBoard("B" + i).type(i % 2 == 1 ? "large" : "small").in(home);
            if (random.nextInt(3) > 0) {
                board.reaches("P1", "P2");
            }
            if (i == boards) {
                board.after("B1");
            }
            project.boards(board);
        }
        project.groups(aGroup("stage").drops(), aGroup("truss").holds().samePanel());
    }

    private void draw(int i, boolean unswitched) {
        Role role = i < 2 ? Role.PROCESSING : i < 4 ? Role.AUXILIARY : Role.AMPLIFIER;
        int poles = Math.min(system.phases().size(), any(1, 1, 1, 1, 1, 2, 2, 3));
        double running = (10 + random.nextInt(100)) / 10.0;
        double idle = Math.round(running * (2 + random.nextInt(7))) / 10.0;
        double peak = Math.sqrt(2) * idle + (role == Role.AMPLIFIER ? 10 + random.nextInt(60) : random.nextInt(25));
        LoadBuilder load = aLoad("L" + (i + 1))
                .role(role)
                .poles(poles)
                .runningAmps(running)
                .idleAmps(idle)
                .powerFactor((70 + random.nextInt(31)) / 100.0)
                .thirdHarmonic(random.nextInt(8) / 10.0)
                .inrushPeakAmps(peak)
                .inrushHalfMillis(any(5, 80, 250, 600));
        if (unswitched) {
            load.unswitched();
        } else if (role == Role.PROCESSING) {
            load.settleSeconds(random.nextInt(4) * 0.25);
        }
        drafts.add(new Draft(load, !unswitched, role, poles, running, peak));
    }

    /** The last switched loads drop as the stage, two before them hold as the truss. */
    private void group() {
        int last = (int) drafts.stream().filter(Draft::switched).count();
        int stage = groupOverBoards ? 4 : 2 + random.nextInt(2);
        for (int i = last - stage; i < last; i++) {
            drafts.get(i).load.group("stage");
        }
        for (int i = Math.max(0, last - stage - 2); i < last - stage; i++) {
            drafts.get(i).load.group("truss");
        }
    }

    private void relate() {
        int switched = (int) drafts.stream().filter(Draft::switched).count();
        int later = 1 + random.nextInt(switched - 1);
        drafts.get(switched - 1).load.comesAfter("L" + (switched - 1));
        drafts.get(later).load.comesAfter("L" + (1 + random.nextInt(later)));
        drafts.get(0).load.apartFrom("L2");
        int alike = 2 + random.nextInt(count - 2);
        IntStream.range(0, alike)
                .filter(other -> drafts.get(other).poles == drafts.get(alike).poles)
                .max()
                .ifPresent(other -> drafts.get(alike).load.samePhaseAs("L" + (other + 1)));
        drafts.get(random.nextInt(count)).load.panels("P" + any(1, 2));
        drafts.get(random.nextInt(count)).load.fixedPanel("P" + any(1, 2));
        drafts.get(random.nextInt(count)).load.fixedSlot(4 + random.nextInt(5));
        drafts.get(random.nextInt(switched)).load.fixedOutput(any(1, 2));
        if (random.nextBoolean()) {
            drafts.get(random.nextInt(switched)).load.fixedBoard("B" + any(1, 2, 3));
        }
    }

    private int any(int... from) {
        return from[random.nextInt(from.length)];
    }
}
