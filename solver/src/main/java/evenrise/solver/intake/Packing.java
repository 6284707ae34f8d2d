package evenrise.solver.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Fewest breakers for pieces that may share them: bin packing in two sizes, running current and inrush. Up to
 * {@value #EXACT_PIECES} pieces the optimum by branch and bound; more by best fit decreasing, with the bound beside it.
 */
final class Packing {
    /** So many pieces are packed to the optimum. */
    static final int EXACT_PIECES = 16;

    private final List<Bundle.Piece> pieces;
    private final Bundle.Limits limits;
    private List<Bundle> best;

    private Packing(List<Bundle.Piece> pieces, Bundle.Limits limits) {
        this.pieces = new ArrayList<>(pieces);
        this.limits = limits;
        this.pieces.sort(Comparator.comparingDouble((Bundle.Piece piece) -> piece.size(limits))
                .reversed());
    }

    /** @param pieces each of which fits a breaker alone */
    static List<Bundle> of(List<Bundle.Piece> pieces, Bundle.Limits limits) {
        Packing packing = new Packing(pieces, limits);
        packing.best = packing.bestFit();
        if (pieces.size() <= EXACT_PIECES && packing.best.size() > leastBundles(pieces, limits)) {
            packing.branch(0, new ArrayList<>());
        }
        return packing.best;
    }

    /**
     * No packing has fewer: the sum of each size over what a breaker takes of it, rounded up; of equal pieces, their number
     * over how many go on one.
     */
    static int leastBundles(List<Bundle.Piece> pieces, Bundle.Limits limits) {
        double amps = pieces.stream().mapToDouble(Bundle.Piece::amps).sum() / limits.amps();
        double trips = pieces.stream().mapToDouble(Bundle.Piece::tripAmps).sum() / limits.tripAmps();
        int bySums = (int) Math.ceil(Math.max(amps, trips) - 1e-9);
        if (pieces.isEmpty() || pieces.stream().anyMatch(piece -> !piece.isLike(pieces.get(0)))) {
            return bySums;
        }
        int together = (int) Math.floor(1 / pieces.get(0).size(limits) + 1e-9);
        return Math.max(bySums, (pieces.size() + together - 1) / together);
    }

    private List<Bundle> bestFit() {
        List<Bundle> bundles = new ArrayList<>();
        // Full bundles are looked at no more: equal pieces fill one after the other.
        int firstOpen = 0;
        for (Bundle.Piece piece : pieces) {
            Bundle tightest = null;
            for (int i = firstOpen; i < bundles.size(); i++) {
                Bundle each = bundles.get(i);
                if (each.hasRoom(piece, limits) && (tightest == null || each.amps() > tightest.amps())) {
                    tightest = each;
                }
            }
            if (tightest == null) {
                tightest = new Bundle();
                bundles.add(tightest);
                firstOpen = Math.max(firstOpen, bundles.size() - MOST_OPEN);
            }
            tightest.add(piece);
        }
        return bundles;
    }

    /** So many bundles stay open for later pieces, which keeps very long lists quick. */
    private static final int MOST_OPEN = 400;

    private void branch(int next, List<Bundle> open) {
        if (open.size() >= best.size()) {
            return;
        }
        if (next == pieces.size()) {
            best = open.stream().map(Bundle::copy).toList();
            return;
        }
        Bundle.Piece piece = pieces.get(next);
        Set<List<Double>> tried = new HashSet<>();
        int inUse = open.size();
        for (int i = 0; i < inUse; i++) {
            Bundle each = open.get(i);
            // Bundles that are equally full are the same choice.
            if (each.hasRoom(piece, limits) && tried.add(List.of(each.amps(), each.tripAmps()))) {
                each.add(piece);
                branch(next + 1, open);
                each.removeLast(piece);
            }
        }
        if (open.size() + 1 < best.size()) {
            Bundle fresh = new Bundle();
            fresh.add(piece);
            open.add(fresh);
            branch(next + 1, open);
            open.remove(open.size() - 1);
        }
    }
}
