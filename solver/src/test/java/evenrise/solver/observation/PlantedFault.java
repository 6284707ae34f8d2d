package evenrise.solver.observation;

import evenrise.model.observation.ExpectedStart;
import evenrise.model.observation.Observation;
import evenrise.model.observation.ObservedStart;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * A fault of one load, or two. Loads are drawn among those that are distinguishable, which is fixed beforehand and knows
 * nothing of what the observer sees: see {@link #isDistinguishable}.
 */
enum PlantedFault {
    DEAD(Finding.MISSING),
    TURNED(Finding.OTHER_PHASES),
    SWAPPED(Finding.SWAPPED),
    LATE(Finding.OTHER_TIME),
    RESIZED(Finding.OTHER_SIZE),
    UNKNOWN(Finding.AS_PLANNED);

    private static final double LEAST_SIGMAS = 5;
    private static final double SAMPLES_APART = 2;

    /** Kinds that are swapped differ by more than what a clamp reads less of a current at another angle. */
    private static final double UNLIKE = 2;

    /** Six standard deviations of the 12 % by which idle currents spread, and more, either way. */
    private static final double TWICE_AND_MORE = 4;

    private static final double RUN_UP_SECONDS = 0.1;
    private static final double HALVES_OF_A_RUN_UP = 8;

    private final Finding finding;

    PlantedFault(Finding finding) {
        this.finding = finding;
    }

    /** What was planted, and how to see whether it was found. */
    record Planted(PlantedFault kind, String load, Optional<String> other, double seconds) {
        Planted(PlantedFault kind, String load, double seconds) {
            this(kind, load, Optional.empty(), seconds);
        }

        /** What is true of a load: the fault of those that have it, nothing of all others. */
        Finding truth(String load) {
            return this.load.equals(load) || other.filter(load::equals).isPresent() ? kind.finding : Finding.AS_PLANNED;
        }

        /** Whether it was said that something is wrong, and rightly what. */
        boolean isFound(Observation seen) {
            if (kind == UNKNOWN) {
                return seen.unknown().stream()
                        .anyMatch(each -> Math.abs(seen.clock().plan(each.seconds()) - seconds) < 0.1);
            }
            return finding(seen) == kind.finding;
        }

        Finding finding(Observation seen) {
            return kind == UNKNOWN
                    ? Finding.AS_PLANNED
                    : seen.starts().stream()
                            .filter(each -> each.expected().loads().contains(load))
                            .map(ObservedStart::finding)
                            .findFirst()
                            .orElseThrow();
        }
    }

    /** Of one load, five standard deviations of a sample and more, two samples from others, while no motor runs up. */
    static boolean isDistinguishable(
            ExpectedStart one, List<ExpectedStart> all, double sigmaAmps, double intervalSeconds) {
        return one.loads().size() == 1
                && one.longestHalfSeconds() < RUN_UP_SECONDS
                && one.amps().values().stream().allMatch(amps -> amps >= LEAST_SIGMAS * sigmaAmps)
                && isQuiet(one.seconds(), one, all, SAMPLES_APART * intervalSeconds);
    }

    private static boolean isQuiet(double seconds, ExpectedStart one, List<ExpectedStart> all, double apart) {
        return all.stream().filter(each -> each != one).allMatch(each -> {
            double since = seconds - each.seconds();
            boolean runsUp = each.longestHalfSeconds() >= RUN_UP_SECONDS
                    && since >= 0
                    && since < HALVES_OF_A_RUN_UP * each.longestHalfSeconds();
            return Math.abs(since) > apart && !runsUp;
        });
    }

    /** Empty where no load of the plant can have this fault. */
    Optional<Planted> plant(SimulatedStart start, List<ExpectedStart> some, List<ExpectedStart> all, Random chance) {
        List<Planted> done = new ArrayList<>();
        switch (this) {
            case DEAD ->
                any(some, chance).ifPresent(one -> {
                    start.kill(load(one));
                    done.add(new Planted(this, load(one), one.seconds()));
                });
            case TURNED ->
                any(some.stream().filter(each -> each.amps().size() < 3).toList(), chance)
                        .ifPresent(one -> {
                            start.turn(load(one));
                            done.add(new Planted(this, load(one), one.seconds()));
                        });
            case SWAPPED ->
                any(unlike(some), chance).ifPresent(two -> {
                    start.swap(load(two[0]), load(two[1]));
                    done.add(new Planted(this, load(two[0]), Optional.of(load(two[1])), two[0].seconds()));
                });
            case LATE ->
                any(gaps(some, all), chance)
                        .ifPresent(gap -> any(some, chance).ifPresent(one -> {
                            start.late(load(one), gap - one.seconds());
                            done.add(new Planted(this, load(one), gap));
                        }));
            case RESIZED ->
                any(some, chance).ifPresent(one -> {
                    start.resize(load(one), chance.nextBoolean() ? TWICE_AND_MORE : 1 / TWICE_AND_MORE);
                    done.add(new Planted(this, load(one), one.seconds()));
                });
            case UNKNOWN ->
                any(gaps(some, all), chance).ifPresent(gap -> {
                    start.add(Phase.values()[chance.nextInt(3)], 0.5 + chance.nextDouble(), gap);
                    done.add(new Planted(this, "", gap));
                });
        }
        return done.stream().findFirst();
    }

    private static String load(ExpectedStart one) {
        return one.loads().get(0);
    }

    private static <T> Optional<T> any(List<T> some, Random chance) {
        return some.isEmpty() ? Optional.empty() : Optional.of(some.get(chance.nextInt(some.size())));
    }

    /** On the same phases, one more than twice the other. */
    private static List<ExpectedStart[]> unlike(List<ExpectedStart> some) {
        List<ExpectedStart[]> pairs = new ArrayList<>();
        for (ExpectedStart one : some) {
            for (ExpectedStart other : some) {
                if (one.seconds() < other.seconds()
                        && one.amps().keySet().equals(other.amps().keySet())) {
                    Phase phase = one.amps().keySet().iterator().next();
                    double ratio = one.amps().get(phase) / other.amps().get(phase);
                    if (ratio > UNLIKE || ratio < 1 / UNLIKE) {
                        pairs.add(new ExpectedStart[] {one, other});
                    }
                }
            }
        }
        return pairs;
    }

    /** Moments between starts, a quarter of a second and more from each. */
    private static List<Double> gaps(List<ExpectedStart> some, List<ExpectedStart> all) {
        double apart = 0.24;
        return some.stream()
                .map(each -> each.seconds() + 0.25)
                .filter(moment -> isQuiet(moment, null, all, apart))
                .toList();
    }
}
