package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;

/**
 * Weighs what was said of each start beside samples and plan together: what is said against the plan stands only where
 * samples fit much better so, and what samples say against the plan is said.
 */
final class SecondLook {
    private final Said said;
    private final Exchanges exchanges;
    private final Reassigned reassigned;
    private final DoubleFunction<RecordedStart> surely;
    private final Set<Double> searched = new HashSet<>();

    /** @param surely what is seen at a moment of the logger's clock at which something comes on */
    SecondLook(Said said, DoubleFunction<RecordedStart> surely) {
        this.said = said;
        this.exchanges = new Exchanges(said);
        this.reassigned = new Reassigned(said);
        this.surely = surely;
        TakenBack back = new TakenBack(said);
        back.stay();
        back.part();
        back.missing();
        back.own();
        back.doubt();
        seek();
    }

    List<ObservedStart> starts() {
        return said.starts;
    }

    List<RecordedStart> unknown() {
        return said.unknown;
    }

    /** Says what samples need, the most needed first. */
    private void seek() {
        boolean isMore;
        int rounds = 0;
        do {
            isMore = exchanges.exchange() || reassigned.delay() || reassigned.turn() || state() || surprise();
        } while (isMore && !said.hindsight.isSpent() && ++rounds < said.starts.size());
        List<Claim> claims = said.claims();
        for (Claim each : claims) {
            if (each.start() >= 0 && said.starts.get(each.start()).finding() == Finding.CANNOT_TELL) {
                Hindsight.Gain gain = said.hindsight.gain(each.moments(), Claim.all(claims, each), each.what());
                ObservedStart start = said.starts.get(each.start());
                double confidence = Sureness.of(gain.costs() - each.price());
                if (gain.perSample() <= Said.UNDERSTOOD && confidence > start.confidence()) {
                    said.partner(each.start()).ifPresent(other -> said.sure(other, confidence));
                    said.sure(each.start(), confidence);
                }
            }
        }
    }

    /** The start that is most unlike what is planned, and of which nothing is said yet. */
    private boolean state() {
        List<Claim> claims = said.claims();
        Otherwise anyway = Claim.all(claims, null);
        int most = -1;
        double best = Likeness.OTHER_SIZE;
        for (int i = 0; i < said.starts.size(); i++) {
            if (said.isOpen(i)) {
                Hindsight.Gain gain = said.free(i, anyway);
                if (gain.costs() > best && gain.perSample() <= Said.UNDERSTOOD) {
                    most = i;
                    best = gain.costs();
                }
            }
        }
        if (most < 0) {
            return false;
        }
        ObservedStart start = said.starts.get(most);
        Hindsight.Gain dead = said.hindsight.gain(
                Set.of(said.due(start)), anyway, Otherwise.dead(start.expected().loads()));
        Finding finding = dead.costs() > best - Said.A_LITTLE ? Finding.MISSING : Finding.OTHER_SIZE;
        said.starts.set(most, Said.as(start, finding, Sureness.of(best - Likeness.OTHER_SIZE), Optional.empty()));
        return true;
    }

    /** Something that no plan knows, in the samples that are understood least. */
    private boolean surprise() {
        List<Claim> claims = said.claims();
        Otherwise anyway = Claim.all(claims, null);
        double worst = Said.UNDERSTOOD;
        double about = Double.NaN;
        for (int i = 0; i < said.starts.size(); i++) {
            if (said.isOpen(i) && !searched.contains(said.due(said.starts.get(i)))) {
                double now = said.free(i, anyway).perSampleNow();
                if (now > worst) {
                    worst = now;
                    about = said.due(said.starts.get(i));
                }
            }
        }
        if (Double.isNaN(about)) {
            return false;
        }
        searched.add(about);
        double best = Likeness.MISSING;
        double found = Double.NaN;
        for (double at = about - Hindsight.BEFORE; at < about + Hindsight.AFTER; at += 2 * said.half) {
            Hindsight.Gain gain = said.hindsight.gain(Set.of(about), anyway, Otherwise.unknown(at));
            if (gain.costs() > best && gain.perSample() <= Said.UNDERSTOOD) {
                best = gain.costs();
                found = at;
            }
        }
        if (!Double.isNaN(found)) {
            said.unknown.add(surely.apply(found + said.half));
        }
        return true;
    }
}
