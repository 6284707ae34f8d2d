package evenrise.solver.engine;

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
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Classical problems that are special cases of ours, written as projects. */
public final class Instances {
    private static final ObjectiveWeights PEAK_ALONE = new ObjectiveWeights(1, 0, 0, 0, 0);

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
        return project(name, PhaseSystem.SINGLE_PHASE, loads, new BoardType("line", stations, List.of(0.0), step, 0));
    }

    /** Jobs of given weights on three machines, the largest sum to be least: loads that come on together, on phases. */
    public static Project threeMachines(String name, int... weights) {
        List<Load> loads = new ArrayList<>();
        for (int job = 0; job < weights.length; job++) {
            loads.add(load("J" + (job + 1), weights[job], List.of()));
        }
        return project(name, PhaseSystem.THREE_PHASE, loads, new BoardType("one", 1, List.of(0.0), List.of(1.0), 0));
    }

    private static Project project(String name, PhaseSystem system, List<Load> loads, BoardType type) {
        Supply supply = new Supply(system, 120, 60, 10_000, 0.8, 1, OptionalDouble.empty());
        int slots = loads.size() * system.phases().size();
        Panel panel = new Panel(
                "P",
                slots,
                10_000,
                1,
                OptionalDouble.empty(),
                SlotNumbering.SEQUENTIAL,
                List.of(),
                List.of(),
                Optional.empty());
        List<Board> boards = IntStream.rangeClosed(1, loads.size())
                .mapToObj(i -> new Board("B" + i, type.id(), "P", List.of(), Optional.empty()))
                .toList();
        return new Project(
                Project.FORMAT,
                name,
                supply,
                0,
                OptionalDouble.empty(),
                List.of(panel),
                List.of(type),
                boards,
                List.of(),
                loads,
                PEAK_ALONE);
    }

    private static Load load(String id, double peakAmps, List<String> before) {
        return new Load(
                id,
                id,
                Role.AUXILIARY,
                1,
                20,
                Optional.empty(),
                true,
                0.001,
                0.0,
                1,
                0,
                peakAmps,
                0.001,
                0,
                Optional.empty(),
                before,
                List.of(),
                List.of(),
                List.of(),
                FixedPlace.NONE);
    }
}
