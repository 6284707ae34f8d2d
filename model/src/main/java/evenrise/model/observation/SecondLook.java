package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.DoubleFunction;

/**
 * Weighs what was said of each start beside samples and plan together: what is said against the plan stands only where
 * samples fit much better so, and what samples say against the plan is said.
 */
final class SecondLook {
    /** Samples that are further off, squared and in variances, are not understood. */
    private static final double UNDERSTOOD = 2;

    /** By so much what fits better is better even where nothing fits. */
    private static final double BEYOND_DOUBT = 100;

    /** So much must a load be likelier on than off to be called as planned. */
    private static final double SURELY_ON = 16;

    /** Two that are exchanged may each be a little unlike only. */
    private static final double A_LITTLE = 6;

    /** Part of a current by which another may differ and still be about as much. */
    private static final double ABOUT = 0.5;

    private final Hindsight hindsight;
    private final MatchedStarts reading;
    private final double half;
    private final List<ObservedStart> starts;
    private final List<RecordedStart> unknown;
    private final DoubleFunction<RecordedStart> surely;
    private final Set<Double> searched = new HashSet<>();

    /** What was said, and when by the logger's clock it shows. */
    private record Claim(Otherwise what, Set<Double> moments, double price, int start, RecordedStart unknown) {}

    /** @param surely what is seen at a moment of the logger's clock at which something comes on */
    SecondLook(
            Hindsight hindsight,
            MatchedStarts reading,
            List<ObservedStart> starts,
            List<RecordedStart> unknown,
            DoubleFunction<RecordedStart> surely) {
        this.surely = surely;
        this.hindsight = hindsight;
        this.reading = reading;
        this.half = reading.sight().intervalSeconds() / 2;
        this.starts = new ArrayList<>(starts);
        this.unknown = new ArrayList<>(unknown);
        stay();
        part();
        doubt();
        seek();
    }

    List<ObservedStart> starts() {
        return starts;
    }

    List<RecordedStart> unknown() {
        return unknown;
    }

    private double due(ObservedStart start) {
        return reading.clock().logger(start.expected().seconds());
    }

    private double seen(ObservedStart start) {
        return start.recorded().orElseThrow().seconds() - half;
    }

    private Optional<Claim> claim(int i) {
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
                        Set.of(due, seen(start)),
                        Likeness.OTHER_TIME,
                        i);
            case OTHER_PHASES, OTHER_TIME_AND_PHASES ->
                claim(
                        Otherwise.dead(loads).and(Otherwise.unknown(seen(start))),
                        Set.of(due, seen(start)),
                        Likeness.OTHER_PHASES,
                        i);
            case SWAPPED -> {
                double other =
                        reading.clock().logger(start.swappedWith().orElseThrow().seconds());
                yield claim(
                        Otherwise.moved(loads, other)
                                .and(Otherwise.moved(
                                        start.swappedWith().orElseThrow().loads(), due)),
                        Set.of(due, other),
                        Likeness.OTHER_TIME,
                        i);
            }
            default -> Optional.empty();
        };
    }

    private static Optional<Claim> claim(Otherwise what, Set<Double> moments, double price, int start) {
        return Optional.of(new Claim(what, moments, price, start, null));
    }

    private List<Claim> claims() {
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
    private OptionalInt partner(int i) {
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

    private static Otherwise all(List<Claim> claims, Claim but) {
        Otherwise all = Otherwise.NOTHING;
        for (Claim each : claims) {
            all = each.equals(but) ? all : all.and(each.what());
        }
        return all;
    }

    /** What came on at another time than a load may be something else, the load being as planned. */
    private void part() {
        for (Claim each : claims()) {
            if (each.start() >= 0 && isElsewhere(starts.get(each.start()))) {
                ObservedStart start = starts.get(each.start());
                Otherwise anyway = all(claims(), each);
                Otherwise apart = Otherwise.unknown(seen(start));
                Hindsight.Gain gain = hindsight.gain(each.moments(), anyway, apart);
                double moved =
                        hindsight.gain(each.moments(), anyway, each.what()).costs();
                double more = gain.costs() - Likeness.MISSING - moved + each.price();
                if (more > (gain.perSample() <= UNDERSTOOD ? 0 : BEYOND_DOUBT) && isSurelyOn(each, anyway.and(apart))) {
                    unknown.add(start.recorded().orElseThrow());
                    starts.set(each.start(), unseen(start));
                }
            }
        }
    }

    /** What came on at its time may be a load, and what is taken for it at another time something else. */
    private void stay() {
        List<Claim> claims = claims();
        for (Claim each : claims) {
            for (Claim here : claims) {
                if (isElsewhere(each) && here != each && stays(each, here, claims) > 0) {
                    ObservedStart start = starts.get(each.start());
                    RecordedStart own = at(here);
                    if (here.start() < 0) {
                        unknown.remove(own);
                    } else {
                        starts.set(here.start(), unseen(starts.get(here.start())));
                    }
                    unknown.add(start.recorded().orElseThrow());
                    found(each.start(), Finding.AS_PLANNED, own, 1);
                    stay();
                    return;
                }
            }
        }
    }

    /** What came on that is taken for something else than a load in its time. */
    private RecordedStart at(Claim claim) {
        return claim.start() < 0
                ? claim.unknown()
                : starts.get(claim.start()).recorded().orElseThrow();
    }

    private boolean isElsewhere(Claim claim) {
        return claim.start() >= 0 && isElsewhere(starts.get(claim.start()));
    }

    /**
     * By how much a load is likelier what is at its time, and what stands for it something that no plan knows.
     *
     * @param here what that is taken for, unknown or another load that is elsewhere
     */
    private double stays(Claim claim, Claim here, List<Claim> claims) {
        ObservedStart start = starts.get(claim.start());
        boolean isInTime =
                (here.start() < 0 || isElsewhere(here)) && Math.abs(at(here).seconds() - half - due(start)) <= 4 * half;
        if (!isInTime) {
            return 0;
        }
        Otherwise anyway = all(
                claims.stream().filter(each -> each != claim && each != here).toList(), null);
        Otherwise apart = Otherwise.unknown(seen(start));
        if (!isSurelyOn(here, anyway.and(apart))) {
            return 0;
        }
        Set<Double> moments = new HashSet<>(claim.moments());
        moments.addAll(here.moments());
        Hindsight.Gain now = hindsight.gain(moments, anyway, claim.what().and(here.what()));
        Hindsight.Gain then = hindsight.gain(moments, anyway, apart);
        return then.perSample() > UNDERSTOOD
                ? 0
                : then.costs() - Likeness.MISSING - now.costs() + claim.price() + here.price();
    }

    /** Whether what stands for it came on at another time, and not at that of a load which it is exchanged with. */
    private boolean isElsewhere(ObservedStart start) {
        return start.swappedWith().isEmpty()
                && start.recorded().isPresent()
                && Math.abs(seen(start) - due(start)) > 4 * half;
    }

    /** As planned, though no step was found. */
    private static ObservedStart unseen(ObservedStart start) {
        return new ObservedStart(
                start.expected(),
                Finding.AS_PLANNED,
                Finding.AS_PLANNED,
                Optional.empty(),
                OptionalDouble.empty(),
                1,
                Optional.empty());
    }

    /** Drops what samples do not need, the least needed first. */
    private void doubt() {
        boolean dropped;
        do {
            dropped = false;
            List<Claim> claims = claims();
            Claim least = null;
            double leastCosts = 0;
            for (Claim each : claims) {
                Hindsight.Gain gain = hindsight.gain(each.moments(), all(claims, each), each.what());
                double costs = gain.costs() - each.price();
                if ((gain.perSampleNow() <= UNDERSTOOD || costs < -BEYOND_DOUBT)
                        && costs < leastCosts
                        && isSurelyOn(each, all(claims, each))) {
                    least = each;
                    leastCosts = costs;
                }
            }
            if (least != null) {
                drop(least);
                dropped = true;
            }
        } while (dropped);
    }

    private boolean isSurelyOn(Claim claim, Otherwise anyway) {
        if (claim.start() < 0) {
            return true;
        }
        ObservedStart start = starts.get(claim.start());
        Otherwise dead = Otherwise.dead(start.expected().loads());
        return hindsight.gain(Set.of(due(start)), anyway, dead).costs() < -SURELY_ON;
    }

    private void drop(Claim claim) {
        if (claim.start() < 0) {
            unknown.remove(claim.unknown());
            return;
        }
        partner(claim.start()).ifPresent(this::dropStart);
        dropStart(claim.start());
    }

    private void dropStart(int i) {
        ObservedStart start = starts.get(i);
        starts.set(i, isElsewhere(start) ? unseen(start) : as(start, Finding.AS_PLANNED, 1, Optional.empty()));
    }

    private static ObservedStart as(
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

    /** Says what samples need, the most needed first. */
    private void seek() {
        boolean said;
        int rounds = 0;
        do {
            said = exchange() || delay() || turn() || state() || surprise();
        } while (said && ++rounds < starts.size());
        List<Claim> claims = claims();
        for (Claim each : claims) {
            if (each.start() >= 0 && starts.get(each.start()).finding() == Finding.CANNOT_TELL) {
                Hindsight.Gain gain = hindsight.gain(each.moments(), all(claims, each), each.what());
                ObservedStart start = starts.get(each.start());
                double confidence = Sureness.of(gain.costs() - each.price());
                if (gain.perSample() <= UNDERSTOOD && confidence > start.confidence()) {
                    partner(each.start()).ifPresent(other -> sure(other, confidence));
                    sure(each.start(), confidence);
                }
            }
        }
    }

    private void sure(int i, double confidence) {
        ObservedStart start = starts.get(i);
        starts.set(i, as(start, start.likeliest(), confidence, start.swappedWith()));
    }

    private boolean isOpen(int i) {
        Finding finding = starts.get(i).finding();
        return finding == Finding.AS_PLANNED;
    }

    /** The start that is most unlike what is planned, and of which nothing is said yet. */
    private boolean state() {
        List<Claim> claims = claims();
        Otherwise anyway = all(claims, null);
        int most = -1;
        double best = Likeness.OTHER_SIZE;
        for (int i = 0; i < starts.size(); i++) {
            if (isOpen(i)) {
                Hindsight.Gain gain = free(i, anyway);
                if (gain.costs() > best && gain.perSample() <= UNDERSTOOD) {
                    most = i;
                    best = gain.costs();
                }
            }
        }
        if (most < 0) {
            return false;
        }
        ObservedStart start = starts.get(most);
        Hindsight.Gain dead = hindsight.gain(
                Set.of(due(start)), anyway, Otherwise.dead(start.expected().loads()));
        Finding finding = dead.costs() > best - A_LITTLE ? Finding.MISSING : Finding.OTHER_SIZE;
        starts.set(most, as(start, finding, Sureness.of(best - Likeness.OTHER_SIZE), Optional.empty()));
        return true;
    }

    private Hindsight.Gain free(int i, Otherwise anyway) {
        ObservedStart start = starts.get(i);
        return hindsight.gain(
                Set.of(due(start)), anyway, Otherwise.free(start.expected().loads()));
    }

    /**
     * Two that are each other.
     *
     * @param claims of others that it makes needless
     * @param gain by how much everything is likelier so
     */
    private record Exchange(int one, int other, List<Claim> claims, double gain) {}

    /** Two that are unlike what is planned, and are each other; what was said of others because of that goes. */
    private boolean exchange() {
        List<Claim> claims = claims();
        Exchange best = null;
        for (int[] pair : pairs(claims)) {
            for (List<Claim> needless : List.of(List.<Claim>of(), about(pair, claims))) {
                double gain = swapped(pair[0], pair[1], needless, claims);
                if (gain > (best == null ? 0 : best.gain())) {
                    best = new Exchange(pair[0], pair[1], needless, gain);
                }
            }
        }
        if (best == null) {
            return false;
        }
        best.claims().forEach(this::drop);
        ObservedStart first = starts.get(best.one());
        ObservedStart second = starts.get(best.other());
        double confidence = Sureness.of(best.gain());
        starts.set(best.one(), as(first, Finding.SWAPPED, confidence, Optional.of(second.expected())));
        starts.set(best.other(), as(second, Finding.SWAPPED, confidence, Optional.of(first.expected())));
        return true;
    }

    /** Of those that are unlike what is planned, and of one that is said to be with what draws about as much. */
    private List<int[]> pairs(List<Claim> claims) {
        Otherwise anyway = all(claims, null);
        boolean[] isSaid = new boolean[starts.size()];
        boolean[] isOdd = new boolean[starts.size()];
        for (int i = 0; i < starts.size(); i++) {
            isSaid[i] = starts.get(i).finding() != Finding.SWAPPED && claim(i).isPresent();
            isOdd[i] = isSaid[i] || isOpen(i) && free(i, anyway).costs() > A_LITTLE;
        }
        List<int[]> pairs = new ArrayList<>();
        for (int i = 0; i < starts.size(); i++) {
            for (int j = i + 1; j < starts.size(); j++) {
                boolean isAlike = isSaid[i] && isOpen(j) && isLike(i, j) || isSaid[j] && isOpen(i) && isLike(j, i);
                if (isOdd[i] && isOdd[j] || isAlike) {
                    pairs.add(new int[] {i, j});
                }
            }
        }
        return pairs;
    }

    /** Whether what stands at the time of one draws about as much as the other should, on its phases. */
    private boolean isLike(int one, int other) {
        ObservedStart start = starts.get(one);
        ExpectedStart like = starts.get(other).expected();
        return start.recorded().isPresent()
                && Math.abs(seen(start) - due(start)) <= 4 * half
                && like.amps().keySet().equals(start.expected().amps().keySet())
                && like.amps().keySet().stream()
                        .allMatch(phase -> Math.abs(
                                        start.recorded().orElseThrow().on(phase).amps() - like.amps(phase))
                                <= ABOUT * like.amps(phase));
    }

    /** What is said of others within the samples that two exchanged ones show in. */
    private List<Claim> about(int[] pair, List<Claim> claims) {
        double one = due(starts.get(pair[0]));
        double other = due(starts.get(pair[1]));
        return claims.stream()
                .filter(each -> each.start() != pair[0] && each.start() != pair[1])
                .filter(each -> each.moments().stream()
                        .anyMatch(at -> Math.abs(at - one) < Hindsight.AFTER || Math.abs(at - other) < Hindsight.AFTER))
                .toList();
    }

    /** Something that seems not to come on, or to be unlike, and is what came on at another time. */
    private boolean delay() {
        List<Claim> claims = claims();
        int late = -1;
        RecordedStart at = null;
        double best = 0;
        for (Claim each : claims) {
            for (RecordedStart start : each.start() < 0 || isMoved(each) ? List.<RecordedStart>of() : unknown) {
                double more = moved(each, start, claims);
                if (more > best) {
                    best = more;
                    late = each.start();
                    at = start;
                }
            }
        }
        if (late < 0) {
            return false;
        }
        found(late, Finding.OTHER_TIME, at, Sureness.of(best));
        unknown.remove(at);
        return true;
    }

    /** Something that seems not to come on, and is what came on at its time on other phases. */
    private boolean turn() {
        List<Claim> claims = claims();
        Claim turned = null;
        RecordedStart at = null;
        double best = 0;
        for (Claim each : claims) {
            if (each.start() >= 0
                    && !each.what().dead().isEmpty()
                    && each.what().unknown().isEmpty()) {
                for (RecordedStart start : unknown) {
                    double more = turned(each, start, claims);
                    if (more > best) {
                        best = more;
                        turned = each;
                        at = start;
                    }
                }
            }
        }
        if (turned == null) {
            return false;
        }
        found(turned.start(), Finding.OTHER_PHASES, at, Sureness.of(best));
        unknown.remove(at);
        return true;
    }

    /** By how much a start is likelier to be what is unknown, on other phases, than what is said of both, or nothing. */
    private double turned(Claim claim, RecordedStart at, List<Claim> claims) {
        ExpectedStart expected = starts.get(claim.start()).expected();
        Likeness.Best alike =
                reading.sight().likeness().of(expected, at, reading.clock().plan(at.seconds()));
        if (alike.explanation() != Likeness.Explanation.OTHER_PHASES) {
            return 0;
        }
        List<Claim> others = claims.stream()
                .filter(each -> each != claim && each.unknown() != at)
                .toList();
        Hindsight.Gain both = hindsight.gain(
                claim.moments(), all(others, null), claim.what().and(Otherwise.unknown(at.seconds() - half)));
        return both.perSample() > UNDERSTOOD
                ? 0
                : Math.min(claim.price() + Likeness.MISSING, both.costs()) - alike.cost();
    }

    private void found(int i, Finding finding, RecordedStart at, double confidence) {
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

    private static boolean isMoved(Claim claim) {
        return !claim.what().moved().isEmpty();
    }

    /** By how much a start is likelier to be what is unknown than what is said of both now. */
    private double moved(Claim claim, RecordedStart at, List<Claim> claims) {
        List<Claim> others = claims.stream()
                .filter(each -> each != claim && each.unknown() != at)
                .toList();
        Otherwise anyway = all(others, null);
        double moment = at.seconds() - half;
        Set<Double> moments = new HashSet<>(claim.moments());
        moments.add(moment);
        Otherwise then = Otherwise.moved(starts.get(claim.start()).expected().loads(), moment);
        Hindsight.Gain moved = hindsight.gain(moments, anyway, then);
        if (moved.perSample() > UNDERSTOOD) {
            return 0;
        }
        double said = hindsight
                        .gain(moments, anyway, claim.what().and(Otherwise.unknown(moment)))
                        .costs()
                - claim.price()
                - Likeness.MISSING;
        return moved.costs() - Likeness.OTHER_TIME - Math.max(0, said);
    }

    /** Something that no plan knows, in the samples that are understood least. */
    private boolean surprise() {
        List<Claim> claims = claims();
        Otherwise anyway = all(claims, null);
        double worst = UNDERSTOOD;
        double about = Double.NaN;
        for (int i = 0; i < starts.size(); i++) {
            if (isOpen(i) && !searched.contains(due(starts.get(i)))) {
                double now = free(i, anyway).perSampleNow();
                if (now > worst) {
                    worst = now;
                    about = due(starts.get(i));
                }
            }
        }
        if (Double.isNaN(about)) {
            return false;
        }
        searched.add(about);
        double best = Likeness.MISSING;
        double found = Double.NaN;
        for (double at = about - Hindsight.BEFORE; at < about + Hindsight.AFTER; at += 2 * half) {
            Hindsight.Gain gain = hindsight.gain(Set.of(about), anyway, Otherwise.unknown(at));
            if (gain.costs() > best && gain.perSample() <= UNDERSTOOD) {
                best = gain.costs();
                found = at;
            }
        }
        if (!Double.isNaN(found)) {
            unknown.add(surely.apply(found + half));
        }
        return true;
    }

    /** By how much two are likelier each other, without what is needless then, than what is said of all of these now. */
    private double swapped(int i, int j, List<Claim> needless, List<Claim> claims) {
        List<Claim> others = claims.stream()
                .filter(each -> each.start() != i && each.start() != j && !needless.contains(each))
                .toList();
        Otherwise anyway = all(others, null);
        Set<Double> moments = new HashSet<>(List.of(due(starts.get(i)), due(starts.get(j))));
        Otherwise now = Otherwise.NOTHING;
        double price = 0;
        for (Claim each : claims) {
            if (each.start() == i || each.start() == j || needless.contains(each)) {
                moments.addAll(each.moments());
                now = now.and(each.what());
                price += each.price();
            }
        }
        Otherwise then = Otherwise.moved(starts.get(i).expected().loads(), due(starts.get(j)))
                .and(Otherwise.moved(starts.get(j).expected().loads(), due(starts.get(i))));
        Hindsight.Gain swap = hindsight.gain(moments, anyway, then);
        if (swap.perSample() > UNDERSTOOD) {
            return 0;
        }
        double said = now.equals(Otherwise.NOTHING)
                ? 0
                : hindsight.gain(moments, anyway, now).costs() - price;
        return swap.costs() - Likeness.OTHER_TIME - Math.max(0, said);
    }
}
