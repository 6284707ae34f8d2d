package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Takes back what was said too much: what samples do not need, or what something else explains better. */
final class TakenBack {
    /** By so much what fits better is better even where nothing fits. */
    private static final double BEYOND_DOUBT = 100;

    private final Said said;

    TakenBack(Said said) {
        this.said = said;
    }

    /** What came on at another time than a load may be something else, the load being as planned. */
    void part() {
        for (Claim each : said.claims()) {
            if (each.start() >= 0 && said.isElsewhere(said.starts.get(each.start()))) {
                ObservedStart start = said.starts.get(each.start());
                Otherwise anyway = Claim.all(said.claims(), each);
                Otherwise apart = Otherwise.unknown(said.seen(start));
                Hindsight.Gain gain = said.hindsight.gain(each.moments(), anyway, apart);
                double moved =
                        said.hindsight.gain(each.moments(), anyway, each.what()).costs();
                double more = gain.costs() - Likeness.MISSING - moved + each.price();
                if (more > (gain.perSample() <= Said.UNDERSTOOD ? 0 : BEYOND_DOUBT)
                        && said.isSurelyOn(each, anyway.and(apart))) {
                    said.unknown.add(start.recorded().orElseThrow());
                    said.starts.set(each.start(), Said.unseen(start));
                }
            }
        }
    }

    /** What came on at its time may be a load, and what is taken for it at another time something else. */
    void stay() {
        List<Claim> claims = said.claims();
        for (Claim each : claims) {
            for (Claim here : claims) {
                if (said.isElsewhere(each) && here != each && stays(each, here, claims) > 0) {
                    ObservedStart start = said.starts.get(each.start());
                    RecordedStart own = said.at(here);
                    if (here.start() < 0) {
                        said.unknown.remove(own);
                    } else {
                        said.starts.set(here.start(), Said.unseen(said.starts.get(here.start())));
                    }
                    said.unknown.add(start.recorded().orElseThrow());
                    said.found(each.start(), Finding.AS_PLANNED, own, 1);
                    stay();
                    return;
                }
            }
        }
    }

    /**
     * By how much a load is likelier what is at its time, and what stands for it something that no plan knows.
     *
     * @param here what that is taken for, unknown or another load that is elsewhere
     */
    private double stays(Claim claim, Claim here, List<Claim> claims) {
        ObservedStart start = said.starts.get(claim.start());
        boolean isInTime = (here.start() < 0 || said.isElsewhere(here))
                && Math.abs(said.at(here).seconds() - said.half - said.due(start)) <= 4 * said.half;
        if (!isInTime) {
            return 0;
        }
        Otherwise anyway = Claim.all(
                claims.stream().filter(each -> each != claim && each != here).toList(), null);
        Otherwise apart = Otherwise.unknown(said.seen(start));
        if (!said.isSurelyOn(here, anyway.and(apart))) {
            return 0;
        }
        Set<Double> moments = new HashSet<>(claim.moments());
        moments.addAll(here.moments());
        Hindsight.Gain now = said.hindsight.gain(moments, anyway, claim.what().and(here.what()));
        Hindsight.Gain then = said.hindsight.gain(moments, anyway, apart);
        return then.perSample() > Said.UNDERSTOOD
                ? 0
                : then.costs() - Likeness.MISSING - now.costs() + claim.price() + here.price();
    }

    /** What stands for a load at another time may be another load in its own, which then does not seem missing. */
    void own() {
        List<Claim> claims = said.claims();
        for (Claim each : claims) {
            for (Claim there : claims) {
                if (said.isElsewhere(each)
                        && !each.what().moved().isEmpty()
                        && isMissingThere(each, there)
                        && isOwn(each, there, claims)) {
                    own();
                    return;
                }
            }
        }
    }

    private boolean isMissingThere(Claim claim, Claim there) {
        return there.start() >= 0
                && !there.what().dead().isEmpty()
                && there.what().unknown().isEmpty()
                && Math.abs(said.seen(said.starts.get(claim.start())) - said.due(said.starts.get(there.start())))
                        <= 4 * said.half;
    }

    /** Whether it is, and then says so. */
    private boolean isOwn(Claim claim, Claim there, List<Claim> claims) {
        ObservedStart start = said.starts.get(claim.start());
        Otherwise anyway = Claim.all(
                claims.stream().filter(each -> each != claim && each != there).toList(), null);
        Set<Double> moments = new HashSet<>(claim.moments());
        moments.addAll(there.moments());
        Hindsight.Gain now = said.hindsight.gain(moments, anyway, claim.what().and(there.what()));
        Hindsight.Gain then = said.hindsight.gain(
                moments, anyway, Otherwise.dead(start.expected().loads()));
        double missing = then.costs() - Likeness.OTHER_SIZE;
        double more = missing - now.costs() + claim.price() + there.price();
        boolean isOwn = more > 0 && then.perSample() <= Said.UNDERSTOOD;
        if (isOwn) {
            said.found(there.start(), Finding.AS_PLANNED, start.recorded().orElseThrow(), 1);
            missing(claim.start(), Sureness.of(Math.min(more, missing)));
        }
        return isOwn;
    }

    private void missing(int i, double confidence) {
        said.starts.set(
                i,
                new ObservedStart(
                        said.starts.get(i).expected(),
                        confidence < Observer.SURE ? Finding.CANNOT_TELL : Finding.MISSING,
                        Finding.MISSING,
                        Optional.empty(),
                        OptionalDouble.empty(),
                        confidence,
                        Optional.empty()));
    }

    /** What is said to have come on at another time, as hardly anything, did not come on at all. */
    void missing() {
        for (Claim each : said.claims()) {
            if (said.isElsewhere(each) && !each.what().moved().isEmpty()) {
                missing(each);
            }
        }
    }

    private void missing(Claim claim) {
        ObservedStart start = said.starts.get(claim.start());
        List<String> loads = start.expected().loads();
        Otherwise anyway = Claim.all(said.claims(), claim);
        Hindsight.Gain dead = said.hindsight.gain(claim.moments(), anyway, Otherwise.dead(loads));
        double late = said.hindsight
                        .gain(claim.moments(), anyway, Otherwise.moved(loads, said.seen(start)))
                        .costs()
                - Likeness.OTHER_TIME;
        double lateAndUnlike =
                said.hindsight.gain(claim.moments(), anyway, claim.what()).costs()
                        - Likeness.OTHER_TIME
                        - Likeness.OTHER_SIZE;
        double more = dead.costs() - Likeness.OTHER_SIZE - Math.max(late, lateAndUnlike);
        if (more > (dead.perSample() <= Said.UNDERSTOOD ? 0 : BEYOND_DOUBT)) {
            double confidence = Sureness.of(Math.min(more, dead.costs() - Likeness.OTHER_SIZE));
            missing(claim.start(), confidence);
            said.unknown.add(start.recorded().orElseThrow());
        }
    }

    /** Drops what samples do not need, the least needed first. */
    void doubt() {
        boolean dropped;
        do {
            dropped = false;
            List<Claim> claims = said.claims();
            Claim least = null;
            double leastCosts = 0;
            for (Claim each : claims) {
                Hindsight.Gain gain = said.hindsight.gain(each.moments(), Claim.all(claims, each), each.what());
                double costs = gain.costs() - each.price();
                if ((gain.perSampleNow() <= Said.UNDERSTOOD || costs < -BEYOND_DOUBT)
                        && costs < leastCosts
                        && said.isSurelyOn(each, Claim.all(claims, each))) {
                    least = each;
                    leastCosts = costs;
                }
            }
            if (least != null) {
                said.drop(least);
                dropped = true;
            }
        } while (dropped);
    }
}
