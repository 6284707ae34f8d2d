package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Finds loads that came on at each other's time, beside what else was said because of that. */
final class Exchanges {
    /** Part of a current by which another may differ and still be about as much. */
    private static final double ABOUT = 0.5;

    private final Said said;

    Exchanges(Said said) {
        this.said = said;
    }

    /**
     * Two that are each other.
     *
     * @param claims of others that it makes needless
     * @param gain by how much everything is likelier so
     */
    private record Exchange(int one, int other, List<Claim> claims, double gain) {}

    /** Two that are unlike what is planned, and are each other; what was said of others because of that goes. */
    boolean exchange() {
        List<Claim> claims = said.claims();
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
        best.claims().forEach(said::drop);
        ObservedStart first = said.starts.get(best.one());
        ObservedStart second = said.starts.get(best.other());
        double confidence = Sureness.of(best.gain());
        said.starts.set(best.one(), Said.as(first, Finding.SWAPPED, confidence, Optional.of(second.expected())));
        said.starts.set(best.other(), Said.as(second, Finding.SWAPPED, confidence, Optional.of(first.expected())));
        return true;
    }

    /** Of those that are unlike what is planned, and of one that is said to be with what draws about as much. */
    private List<int[]> pairs(List<Claim> claims) {
        Otherwise anyway = Claim.all(claims, null);
        boolean[] isSaid = new boolean[said.starts.size()];
        boolean[] isOdd = new boolean[said.starts.size()];
        for (int i = 0; i < said.starts.size(); i++) {
            isSaid[i] = said.starts.get(i).finding() != Finding.SWAPPED
                    && said.claim(i).isPresent();
            isOdd[i] = isSaid[i] || said.isOpen(i) && said.free(i, anyway).costs() > Said.A_LITTLE;
        }
        List<int[]> pairs = new ArrayList<>();
        for (int i = 0; i < said.starts.size(); i++) {
            for (int j = i + 1; j < said.starts.size(); j++) {
                boolean isAlike =
                        isSaid[i] && said.isOpen(j) && isLike(i, j) || isSaid[j] && said.isOpen(i) && isLike(j, i);
                if (isOdd[i] && isOdd[j] || isAlike) {
                    pairs.add(new int[] {i, j});
                }
            }
        }
        return pairs;
    }

    /** Whether what stands at the time of one draws about as much as the other should, on its phases. */
    private boolean isLike(int one, int other) {
        ObservedStart start = said.starts.get(one);
        ExpectedStart like = said.starts.get(other).expected();
        return start.recorded().isPresent()
                && Math.abs(said.seen(start) - said.due(start)) <= 4 * said.half
                && like.amps().keySet().equals(start.expected().amps().keySet())
                && like.amps().keySet().stream()
                        .allMatch(phase -> Math.abs(
                                        start.recorded().orElseThrow().on(phase).amps() - like.amps(phase))
                                <= ABOUT * like.amps(phase));
    }

    /** What is said of others within the samples that two exchanged ones show in. */
    private List<Claim> about(int[] pair, List<Claim> claims) {
        double one = said.due(said.starts.get(pair[0]));
        double other = said.due(said.starts.get(pair[1]));
        return claims.stream()
                .filter(each -> each.start() != pair[0] && each.start() != pair[1])
                .filter(each -> each.moments().stream()
                        .anyMatch(at -> Math.abs(at - one) < Hindsight.AFTER || Math.abs(at - other) < Hindsight.AFTER))
                .toList();
    }

    /** By how much two are likelier each other, without what is needless then, than what is said of all of these now. */
    private double swapped(int i, int j, List<Claim> needless, List<Claim> claims) {
        List<Claim> others = claims.stream()
                .filter(each -> each.start() != i && each.start() != j && !needless.contains(each))
                .toList();
        Otherwise anyway = Claim.all(others, null);
        Set<Double> moments = new HashSet<>(List.of(said.due(said.starts.get(i)), said.due(said.starts.get(j))));
        Otherwise now = Otherwise.NOTHING;
        double price = 0;
        for (Claim each : claims) {
            if (each.start() == i || each.start() == j || needless.contains(each)) {
                moments.addAll(each.moments());
                now = now.and(each.what());
                price += each.price();
            }
        }
        Otherwise then = Otherwise.moved(said.starts.get(i).expected().loads(), said.due(said.starts.get(j)))
                .and(Otherwise.moved(said.starts.get(j).expected().loads(), said.due(said.starts.get(i))));
        Hindsight.Gain swap = said.hindsight.gain(moments, anyway, then);
        if (swap.perSample() > Said.UNDERSTOOD) {
            return 0;
        }
        double asSaid = now.equals(Otherwise.NOTHING)
                ? 0
                : said.hindsight.gain(moments, anyway, now).costs() - price;
        return swap.costs() - Likeness.OTHER_TIME - Math.max(0, asSaid);
    }
}
