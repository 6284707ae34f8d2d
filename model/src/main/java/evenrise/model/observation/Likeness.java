package evenrise.model.observation;

import evenrise.model.observation.RecordedStart.Change;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/**
 * How unlike an expected and a recorded start are, in squared standard deviations, and what would explain that. Each
 * explanation beyond "as planned" has a price, so that two coincidences are not preferred to one fault.
 */
final class Likeness {
    /** Standard deviation of a load's idle current about what the project states (common practice, no source). */
    static final double SPREAD = 0.12;

    static final double OTHER_TIME = 22;
    static final double OTHER_PHASES = 22;
    static final double OTHER_SIZE = 16;

    /** A load that nothing recorded stands for, and a recorded start that no load stands for. */
    static final double MISSING = 26;

    /** Of a current at another angle than what flows already a clamp may read no more than so much more. */
    private static final double LEAST_READ = 0.5;

    /** A start shows on other phases by no more than so much of it (common practice, no source). */
    private static final double CROSSTALK = 0.03;

    /** Several surges are not one that halves: so much of them may be taken for what flows in the end. */
    private static final double MIXED = 0.01;

    /** So much of what flows in the end flows at once, surge or not; soft starters that begin lower are not told. */
    private static final double AT_ONCE = 0.5;

    /** What is less like each other than two things that are missing is no pair, however much less. */
    static final double NO_PAIR = 2 * MISSING;

    private static final Phase[] PHASES = Phase.values();

    private static final int[] PLANNED = {0, 1, 2};

    private static final List<int[]> ORDERS = List.of(
            PLANNED, new int[] {1, 2, 0}, new int[] {2, 0, 1}, new int[] {0, 2, 1}, new int[] {2, 1, 0}, new int[] {
                1, 0, 2
            });

    private final Set<Phase> phases;
    private final double sigmaSeconds;

    /** What explains a pair best. */
    enum Explanation {
        AS_PLANNED,
        OTHER_SIZE,
        OTHER_TIME,
        OTHER_PHASES,
        OTHER_TIME_AND_PHASES
    }

    record Best(double cost, Explanation explanation) {}

    /** @param phases that were recorded */
    Likeness(Set<Phase> phases, double sigmaSeconds) {
        this.phases = phases;
        this.sigmaSeconds = sigmaSeconds;
    }

    /** @param planSeconds when the recorded start was, by the plan's clock */
    Best of(ExpectedStart expected, RecordedStart recorded, double planSeconds) {
        double time = timeCost(expected, planSeconds);
        double turned = Double.POSITIVE_INFINITY;
        for (int[] order : ORDERS.subList(1, ORDERS.size())) {
            turned = Math.min(turned, elsewhereCost(expected, recorded, order));
        }
        double elsewhere = elsewhereCost(expected, recorded, PLANNED);
        Best best = new Best(time + sizeCost(expected, recorded), Explanation.AS_PLANNED);
        best = less(best, time + OTHER_SIZE + otherPhasesCost(expected, recorded), Explanation.OTHER_SIZE);
        best = less(best, OTHER_TIME + elsewhere, Explanation.OTHER_TIME);
        best = less(best, time + OTHER_PHASES + turned, Explanation.OTHER_PHASES);
        return less(best, OTHER_TIME + OTHER_PHASES + turned, Explanation.OTHER_TIME_AND_PHASES);
    }

    /** As planned, or with two that are exchanged at its own time: with what a clamp reads there. */
    double inPlaceCost(ExpectedStart expected, RecordedStart recorded, double planSeconds) {
        return timeCost(expected, planSeconds) + sizeCost(expected, recorded);
    }

    private double timeCost(ExpectedStart expected, double planSeconds) {
        double late = (planSeconds - expected.seconds()) / sigmaSeconds;
        return late * late;
    }

    private static Best less(Best best, double cost, Explanation explanation) {
        return cost < best.cost() ? new Best(cost, explanation) : best;
    }

    /** Where and when it is planned. */
    private double sizeCost(ExpectedStart expected, RecordedStart recorded) {
        double cost = 0;
        for (Phase phase : phases) {
            double amps = expected.readAmps(phase);
            cost += cost(expected, amps, amps, expected.amps(phase), phase, recorded);
            if (cost >= NO_PAIR) {
                return cost;
            }
        }
        return cost;
    }

    /** With what is expected on each phase taken from another, or at another time: beside currents at other angles. */
    private double elsewhereCost(ExpectedStart expected, RecordedStart recorded, int[] order) {
        double cost = 0;
        for (Phase phase : phases) {
            double amps = expected.amps(PHASES[order[phase.ordinal()]]);
            cost += cost(expected, LEAST_READ * amps, amps, amps, phase, recorded);
            if (cost >= NO_PAIR) {
                return cost;
            }
        }
        return cost;
    }

    /** What flows once the surge is over, and at once at least about half of that. */
    private double cost(
            ExpectedStart expected, double least, double most, double amps, Phase phase, RecordedStart recorded) {
        Change change = recorded.on(phase);
        double spread = amps > 0 ? SPREAD * amps : CROSSTALK * expected.greatestAmps();
        double left = expected.isVague()
                ? StepFit.UNLIKE * expected.surgeLeftAmps(phase, change.seenSeconds() / 2)
                        + MIXED * expected.surgeLeftAmps(phase, 0)
                : 0;
        double sigma = Math.sqrt(change.sigmaAmps() * change.sigmaAmps() + spread * spread + left * left);
        double off = (change.amps() - Math.max(least, Math.min(most, change.amps()))) / sigma;
        double jumps = amps > 0
                ? Math.max(0, AT_ONCE * amps - change.jumpAmps()) / change.jumpSigmaAmps()
                : change.jumpAmps() / Math.hypot(change.jumpSigmaAmps(), spread);
        return Math.max(off * off, jumps * jumps);
    }

    /** Of another size, but on its phases and no others: what flows where nothing is expected stays unlike. */
    private double otherPhasesCost(ExpectedStart expected, RecordedStart recorded) {
        double cost = 0;
        for (Phase phase : phases) {
            boolean isExpected = expected.amps(phase) > 0;
            Change change = recorded.on(phase);
            boolean isSeen = recorded.steps().containsKey(phase) && change.jumpAmps() > 0;
            if (isExpected != isSeen) {
                double off = Math.max(change.jumpAmps(), expected.amps(phase)) / change.jumpSigmaAmps();
                cost += off * off;
            }
        }
        return cost;
    }

    /** Orders of phases, the planned one first. */
    static List<int[]> orders() {
        return new ArrayList<>(
                ORDERS.stream().map(each -> Arrays.copyOf(each, each.length)).toList());
    }
}
