package evenrise.model.check;

import evenrise.model.contract.Decimals;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * The sequence can be as short as it must be, and its order does not contradict itself. Necessary: a load is on no earlier
 * than the least start delay of its boards and than what the order rules make it wait for (each wait less the 0.5 ms that
 * comparisons of times forgive); a wait that leads back to itself never ends; and by the last allowed instant a board has
 * passed no more outputs than its shortest steps allow, so all boards together must have passed enough.
 */
final class TimeSuffices {
    /** What comparisons of times forgive, in seconds. */
    static final double SECONDS_TOLERANCE = 5e-4;

    private final Candidates candidates;
    private final Consumer<Objection> found;
    private final WaitGraph waits = new WaitGraph();
    private final List<Load> switched = new ArrayList<>();

    private TimeSuffices(Candidates candidates, Consumer<Objection> found) {
        this.candidates = candidates;
        this.found = found;
    }

    static void check(Candidates candidates, Consumer<Objection> found) {
        new TimeSuffices(candidates, found).check();
    }

    private void check() {
        ProjectParts parts = candidates.parts;
        Map<List<Object>, Double> earliest = new HashMap<>();
        Map<String, Integer> node = new HashMap<>();
        for (Load load : candidates.placeable()) {
            if (load.switched()) {
                Load its = parts.leadOf(load).orElse(load);
                List<Object> alike =
                        List.of(candidates.ofLoad.get(its.id()), its.fixed(), its.system(), its.offAfterSeconds() > 0);
                double first = earliest.computeIfAbsent(alike, key -> earliestOutput(its));
                node.put(load.id(), waits.add(first));
                switched.add(load);
            }
        }
        if (switched.isEmpty()) {
            return;
        }
        Map<Optional<String>, Milestones> milestones = new HashMap<>();
        for (Load load : switched) {
            int mine = node.get(load.id());
            load.comesWith().map(node::get).ifPresent(lead -> waits.wait(lead, mine, 0));
            Milestones its = milestones.computeIfAbsent(
                    parts.systemOf(load), any -> new Milestones(waits.add(0), waits.add(0), waits.add(0)));
            for (String before : load.comesAfter()) {
                if (node.containsKey(before)) {
                    double settle = parts.loads.get(before).settleSeconds();
                    waits.wait(node.get(before), mine, settle - SECONDS_TOLERANCE);
                }
            }
            if (load.role() == Role.PROCESSING) {
                waits.wait(mine, its.processingOn(), 0);
                waits.wait(mine, its.processingReady(), load.settleSeconds());
            } else if (load.role() == Role.AUXILIARY) {
                waits.wait(its.processingOn(), mine, -SECONDS_TOLERANCE);
                waits.wait(mine, its.auxiliaryOn(), 0);
            } else {
                waits.wait(its.processingReady(), mine, -SECONDS_TOLERANCE);
                waits.wait(its.auxiliaryOn(), mine, -SECONDS_TOLERANCE);
            }
        }
        List<Integer> circle = waits.settle();
        if (!circle.isEmpty()) {
            contradiction(circle);
        } else {
            parts.project.maxDurationSeconds().ifPresent(this::duration);
        }
    }

    /** When the loads of a role in one system are on, and settled: roles come one after another within a system. */
    private record Milestones(int processingOn, int processingReady, int auxiliaryOn) {}

    private void contradiction(List<Integer> circle) {
        List<Load> inIt = circle.stream()
                .filter(n -> n < switched.size())
                .sorted()
                .map(switched::get)
                .toList();
        Load one = inIt.stream()
                .filter(load ->
                        load.role() != Role.AMPLIFIER && !load.comesAfter().isEmpty())
                .findFirst()
                .orElse(inIt.get(0));
        found.accept(Objection.impossible(
                candidates.parts.pointer(one) + "/comes_after",
                "at odds with the order of roles: "
                        + Shown.quoted(inIt.stream().map(Load::id).toList()) + " wait for each other to settle",
                "an order in which processing comes first and amplifiers come last",
                "Maybe one of their roles is wrong, or comes_after is the wrong way round."));
    }

    private void duration(double most) {
        double least = Collections.max(waits.times());
        if (least > most + SECONDS_TOLERANCE) {
            int last = waits.times().indexOf(least);
            String what = last < switched.size()
                    ? "load " + Shown.quoted(switched.get(last).id())
                    : "the last role";
            tooShort(most, what + " can be on at " + Decimals.toThousandths(least, most) + " s at the earliest", least);
            return;
        }
        long passed = 0;
        for (Board board : candidates.parts.project.boards()) {
            passed += outputsBy(board, most + SECONDS_TOLERANCE);
        }
        long wanting = switched.stream().filter(ProjectParts::needsOutput).count();
        if (passed < wanting && totalOutputs() >= wanting) {
            double enough = most;
            while (outputsBy(enough) < wanting) {
                enough = Math.ceil(enough * 1.05 + 0.5);
            }
            String value =
                    "all boards together can pass " + passed + " outputs by then, for " + wanting + " switched loads";
            tooShort(most, value, enough);
        }
    }

    private void tooShort(double most, String why, double enough) {
        found.accept(Objection.impossible(
                "/max_duration_s",
                Decimals.toThousandths(most, enough) + ", and " + why,
                "more time, at least about " + Decimals.toThousandths(enough, most),
                "Maybe shorten settle times, steps or start delays."));
    }

    /** 0 where no board could feed the load; that is said elsewhere. */
    private double earliestOutput(Load load) {
        OptionalDouble least = candidates.boardsFor(load).stream()
                .mapToDouble(board -> {
                    BoardType type = candidates.parts.types.get(board.type());
                    int before = load.fixed().output().orElse(1) - 1;
                    return ProjectParts.earliestSeconds(type, before);
                })
                .min();
        return least.orElse(0);
    }

    private long outputsBy(double seconds) {
        return candidates.parts.project.boards().stream()
                .mapToLong(board -> outputsBy(board, seconds))
                .sum();
    }

    private long outputsBy(Board board, double seconds) {
        BoardType type = candidates.parts.types.get(board.type());
        int usable = candidates.parts.usableOutputs(board);
        double left = seconds - ProjectParts.earliestSeconds(type, 0);
        if (left < 0) {
            return 0;
        }
        double step = type.isTimedByOutput() ? 0 : Collections.min(type.stepSeconds());
        return step == 0 ? usable : (long) Math.min(usable, 1 + Math.floor(left / step + 1e-9));
    }

    private long totalOutputs() {
        return candidates.parts.project.boards().stream()
                .mapToLong(candidates.parts::usableOutputs)
                .sum();
    }
}
