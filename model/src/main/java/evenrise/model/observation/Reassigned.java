package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.project.Phase;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Finds what something unknown is: a load that seems not to come on, late, early or on other phases. */
final class Reassigned {
    private final Said said;

    Reassigned(Said said) {
        this.said = said;
    }

    /** Something that seems not to come on, or to be unlike, and is what came on at another time. */
    boolean delay() {
        List<Claim> claims = said.claims();
        int late = -1;
        RecordedStart at = null;
        double best = 0;
        for (Claim each : claims) {
            for (RecordedStart start : each.start() < 0 || isMoved(each) ? List.<RecordedStart>of() : said.unknown) {
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
        said.found(late, Finding.OTHER_TIME, at, Sureness.of(best));
        said.unknown.remove(at);
        return true;
    }

    private static boolean isMoved(Claim claim) {
        return !claim.what().moved().isEmpty();
    }

    /** By how much a start is likelier to be what is unknown than what is said of both now. */
    private double moved(Claim claim, RecordedStart at, List<Claim> claims) {
        Set<Phase> phases = said.starts.get(claim.start()).expected().amps().keySet();
        if (at.steps().isEmpty() || !phases.containsAll(at.steps().keySet())) {
            return 0;
        }
        List<Claim> others = claims.stream()
                .filter(each -> each != claim && each.unknown() != at)
                .toList();
        Otherwise anyway = Claim.all(others, null);
        double moment = at.seconds() - said.half;
        Set<Double> moments = new HashSet<>(claim.moments());
        moments.add(moment);
        Otherwise then =
                Otherwise.moved(said.starts.get(claim.start()).expected().loads(), moment);
        Hindsight.Gain moved = said.hindsight.gain(moments, anyway, then);
        if (moved.perSample() > Said.UNDERSTOOD) {
            return 0;
        }
        double asSaid = said.hindsight
                        .gain(moments, anyway, claim.what().and(Otherwise.unknown(moment)))
                        .costs()
                - claim.price()
                - Likeness.MISSING;
        return moved.costs() - Likeness.OTHER_TIME - Math.max(0, asSaid);
    }

    /** Something that seems not to come on, and is what came on at its time on other phases. */
    boolean turn() {
        List<Claim> claims = said.claims();
        Claim turned = null;
        RecordedStart at = null;
        double best = 0;
        for (Claim each : claims) {
            if (each.start() >= 0
                    && !each.what().dead().isEmpty()
                    && each.what().unknown().isEmpty()) {
                for (RecordedStart start : said.unknown) {
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
        said.found(turned.start(), Finding.OTHER_PHASES, at, Sureness.of(best));
        said.unknown.remove(at);
        return true;
    }

    /** By how much a start is likelier to be what is unknown, on other phases, than what is said of both, or nothing. */
    private double turned(Claim claim, RecordedStart at, List<Claim> claims) {
        Likeness.Best alike = said.reading
                .sight()
                .likeness()
                .of(
                        said.starts.get(claim.start()).expected(),
                        at,
                        said.reading.clock().plan(at.seconds()));
        if (alike.explanation() != Likeness.Explanation.OTHER_PHASES) {
            return 0;
        }
        List<Claim> others = claims.stream()
                .filter(each -> each != claim && each.unknown() != at)
                .toList();
        Hindsight.Gain both = said.hindsight.gain(
                claim.moments(),
                Claim.all(others, null),
                claim.what().and(Otherwise.unknown(at.seconds() - said.half)));
        return both.perSample() > Said.UNDERSTOOD
                ? 0
                : Math.min(claim.price() + Likeness.MISSING, both.costs()) - alike.cost();
    }
}
