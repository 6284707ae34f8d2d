package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** What is said of each start at a moment of the second look, as claims that can be weighed, and how it changes. */
final class Said {
    /** Samples that are further off, squared and in variances, are not understood. */
    static final double UNDERSTOOD = 2;

    /** Two that are exchanged may each be a little unlike only. */
    static final double A_LITTLE = 6;

    /** So much must a load be likelier on than off to be called as planned. */
    private static final double SURELY_ON = 16;

    final Hindsight hindsight;
    final MatchedStarts reading;
    /** Of an interval between samples. */
    final double half;

    final List<ObservedStart> starts;
    final List<RecordedStart> unknown;

    Said(Hindsight hindsight, MatchedStarts reading, List<ObservedStart> starts, List<RecordedStart> unknown) {
        this.hindsight = hindsight;
        this.reading = reading;
        this.half = reading.sight().intervalSeconds() / 2;
        this.starts = new ArrayList<>(starts);
        this.unknown = new ArrayList<>(unknown);
    }

    double due(ObservedStart start) {
        return reading.clock().logger(start.expected().seconds());
    }

    double seen(ObservedStart start) {
        return start.recorded().orElseThrow().seconds() - half;
    }

    Optional<Claim> claim(int i) {
        ObservedStart start = starts.get(i);
        List<String> loads = start.expected().loads();
        double due = due(start);
        Finding what = start.finding() == Finding.CANNOT_TELL ? start.likeliest() : start.finding();
        return switch (what) {
            case OTHER_SIZE -> claim(Otherwise.free(loads), Set.of(due), Likeness.OTHER_SIZE, i);
            case MISSING -> claim(Otherwise.dead(loads), Set.of(due), Likeness.OTHER_SIZE, i);
            case OTHER_TIME ->
                claim(
                        Otherwise.moved(loads, seen(start)).and(Otherwise.free(loads)),
                        Claim.moments(due, seen(start)),
                        Likeness.OTHER_TIME,
                        i);
            case OTHER_PHASES, OTHER_TIME_AND_PHASES ->
                claim(
                        Otherwise.dead(loads).and(Otherwise.unknown(seen(start))),
                        Claim.moments(due, seen(start)),
                        Likeness.OTHER_PHASES,
                        i);
            case SWAPPED -> {
                double other =
                        reading.clock().logger(start.swappedWith().orElseThrow().seconds());
                yield claim(
                        Otherwise.moved(loads, other)
                                .and(Otherwise.moved(
                                        start.swappedWith().orElseThrow().loads(), due)),
                        Claim.moments(due, other),
                        Likeness.OTHER_TIME,
                        i);
            }
            default -> Optional.empty();
        };
    }

    static Optional<Claim> claim(Otherwise what, Set<Double> moments, double price, int start) {
        return Optional.of(new Claim(what, moments, price, start, null));
    }

    List<Claim> claims() {
        List<Claim> claims = new ArrayList<>();
        for (int i = 0; i < starts.size(); i++) {
            OptionalInt partner = partner(i);
            boolean isSaidOfPartner = partner.isPresent() && partner.getAsInt() < i;
            if (!isSaidOfPartner) {
                claim(i).ifPresent(claims::add);
            }
        }
        for (RecordedStart each : unknown) {
            double at = each.seconds() - half;
            claims.add(new Claim(Otherwise.unknown(at), Set.of(at), Likeness.MISSING, -1, each));
        }
        return claims;
    }

    /** The start that one is said to be exchanged with, where the same is said of that: one claim is of both. */
    OptionalInt partner(int i) {
        for (int j = 0; j < starts.size(); j++) {
            if (starts.get(i).swappedWith().equals(Optional.of(starts.get(j).expected()))
                    && starts.get(j)
                            .swappedWith()
                            .equals(Optional.of(starts.get(i).expected()))) {
                return OptionalInt.of(j);
            }
        }
        return OptionalInt.empty();
    }

    /** What came on that is taken for something else than a load in its time. */
    RecordedStart at(Claim claim) {
        return claim.start() < 0
                ? claim.unknown()
                : starts.get(claim.start()).recorded().orElseThrow();
    }

    boolean isElsewhere(Claim claim) {
        return claim.start() >= 0 && isElsewhere(starts.get(claim.start()));
    }

    /** Whether what stands for it came on at another time, and not at that of a load which it is exchanged with. */
    boolean isElsewhere(ObservedStart start) {
        return start.swappedWith().isEmpty()
                && start.recorded().isPresent()
                && Math.abs(seen(start) - due(start)) > 4 * half;
    }

    /** As planned, though no step was found. */
    static ObservedStart unseen(ObservedStart start) {
        return new ObservedStart(
                start.expected(),
                Finding.AS_PLANNED,
                Finding.AS_PLANNED,
                Optional.empty(),
                OptionalDouble.empty(),
                1,
                Optional.empty());
    }

    boolean isSurelyOn(Claim claim, Otherwise anyway) {
        if (claim.start() < 0) {
            return true;
        }
        ObservedStart start = starts.get(claim.start());
        Otherwise dead = Otherwise.dead(start.expected().loads());
        return hindsight.gain(Set.of(due(start)), anyway, dead).costs() < -SURELY_ON;
    }

    void drop(Claim claim) {
        if (claim.start() < 0) {
            unknown.remove(claim.unknown());
            return;
        }
        partner(claim.start()).ifPresent(this::dropStart);
        dropStart(claim.start());
    }

    void dropStart(int i) {
        ObservedStart start = starts.get(i);
        starts.set(i, isElsewhere(start) ? unseen(start) : as(start, Finding.AS_PLANNED, 1, Optional.empty()));
    }

    static ObservedStart as(
            ObservedStart start, Finding finding, double confidence, Optional<ExpectedStart> swappedWith) {
        return new ObservedStart(
                start.expected(),
                confidence < Observer.SURE ? Finding.CANNOT_TELL : finding,
                finding,
                start.recorded(),
                start.recorded().isPresent() ? start.planSeconds() : OptionalDouble.empty(),
                confidence,
                swappedWith);
    }

    void sure(int i, double confidence) {
        ObservedStart start = starts.get(i);
        starts.set(i, as(start, start.likeliest(), confidence, start.swappedWith()));
    }

    boolean isOpen(int i) {
        Finding finding = starts.get(i).finding();
        return finding == Finding.AS_PLANNED;
    }

    Hindsight.Gain free(int i, Otherwise anyway) {
        ObservedStart start = starts.get(i);
        return hindsight.gain(
                Set.of(due(start)), anyway, Otherwise.free(start.expected().loads()));
    }

    void found(int i, Finding finding, RecordedStart at, double confidence) {
        starts.set(
                i,
                new ObservedStart(
                        starts.get(i).expected(),
                        confidence < Observer.SURE ? Finding.CANNOT_TELL : finding,
                        finding,
                        Optional.of(at),
                        OptionalDouble.of(reading.clock().plan(at.seconds())),
                        confidence,
                        Optional.empty()));
    }
}
