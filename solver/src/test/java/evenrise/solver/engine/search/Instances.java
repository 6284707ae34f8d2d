package evenrise.solver.engine.search;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.Supply;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Classical problems that are special cases of ours, written as projects. */
public final class Instances {
    private static final ObjectiveWeights PEAK_ALONE = ObjectiveWeights.builder()
            .peakInrush(1)
            .supplyImbalance(0)
            .panelImbalance(0)
            .duration(0)
            .boards(0)
            .build();

    private Instances() {}

    /**
     * Assembly-line balancing, type 2: tasks of given times, each no earlier than its predecessors, on a line of stations;
     * the largest station time is to be least. A task is a load whose inrush peak is its time, a station a step.
     *
     * @param precedence pairs of tasks, counted from 1
     */
    public static Project assemblyLine(String name, int[] times, int[][] precedence, int stations) {
        List<Load> loads = new ArrayList<>();
        for (int task = 1; task <= times.length; task++) {
            List<String> before = new ArrayList<>();
            for (int[] pair : precedence) {
                if (pair[1] == task) {
                    before.add("T" + pair[0]);
                }
            }
            loads.add(load("T" + task, times[task - 1], before));
        }
        List<Double> step = List.of(1.0);
        return project(
                name,
                PhaseSystem.SINGLE_PHASE,
                loads,
                BoardType.builder()
                        .id("line")
                        .outputs(stations)
                        .startDelaySeconds(List.of(0.0))
                        .stepSeconds(step)
                        .price(0)
                        .build());
    }

    /** Jobs of given weights on three machines, the largest sum to be least: loads that come on together, on phases. */
    public static Project threeMachines(String name, int... weights) {
        List<Load> loads = new ArrayList<>();
        for (int job = 0; job < weights.length; job++) {
            loads.add(load("J" + (job + 1), weights[job], List.of()));
        }
        return project(
                name,
                PhaseSystem.THREE_PHASE,
                loads,
                BoardType.builder()
                        .id("one")
                        .outputs(1)
                        .startDelaySeconds(List.of(0.0))
                        .stepSeconds(List.of(1.0))
                        .price(0)
                        .build());
    }

    private static Project project(String name, PhaseSystem system, List<Load> loads, BoardType type) {
        Supply supply = Supply.builder()
                .system(system)
                .lineToNeutralVolts(120)
                .frequencyHertz(60)
                .ratedAmps(10_000)
                .continuousFraction(0.8)
                .neutralFactor(1)
                .build();
        int slots = loads.size() * system.phases().size();
        Panel panel = Panel.builder()
                .id("P")
                .slots(slots)
                .ratedAmps(10_000)
                .neutralFactor(1)
                .numbering(SlotNumbering.SEQUENTIAL)
                .build();
        List<Board> boards = IntStream.rangeClosed(1, loads.size())
                .mapToObj(i ->
                        Board.builder().id("B" + i).type(type.id()).panel("P").build())
                .toList();
        return Project.builder()
                .name(name)
                .supply(supply)
                .timingToleranceSeconds(0)
                .panels(List.of(panel))
                .boardTypes(List.of(type))
                .boards(boards)
                .loads(loads)
                .objective(PEAK_ALONE)
                .build();
    }

    private static Load load(String id, double peakAmps, List<String> before) {
        return Load.builder()
                .id(id)
                .name(id)
                .role(Role.AUXILIARY)
                .poles(1)
                .breakerAmps(20)
                .switched(true)
                .runningAmps(0.001)
                .idleAmps(0.0)
                .powerFactor(1)
                .thirdHarmonic(0)
                .inrushPeakAmps(peakAmps)
                .inrushHalfMillis(0.001)
                .settleSeconds(0)
                .comesAfter(before)
                .fixed(FixedPlace.NONE)
                .build();
    }
}
