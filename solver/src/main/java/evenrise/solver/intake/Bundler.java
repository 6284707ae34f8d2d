package evenrise.solver.intake;

import evenrise.model.electrical.breaker.InstantaneousBand;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.intake.Mapping;
import evenrise.model.project.TripCurve;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Puts pieces of one room, role, zone, feed, number of poles, outlet and service onto the fewest breakers. An inrush parts
 * pieces that would share one; it never makes one larger.
 */
final class Bundler {
    private final Mapping mapping;
    private final Notices notices;
    private final BreakerSizing sizing;
    private final InstantaneousBand band;

    Bundler(Mapping mapping, Notices notices) {
        this.mapping = mapping;
        this.notices = notices;
        this.sizing = new BreakerSizing(mapping, notices);
        this.band = InstantaneousBand.of(mapping.curveOfBreakers().orElse(TripCurve.C));
    }

    /**
     * One breaker with what is on it.
     *
     * @param isStated whether the list states the rating
     */
    record Branch(Item.Kind kind, double breakerAmps, Optional<TripCurve> curve, List<Item> pieces, boolean isStated) {}

    List<Branch> bundle(List<Item> items) {
        ListedCircuits circuits = new ListedCircuits(mapping, notices, items);
        Map<Item.Kind, List<Item>> kinds = new LinkedHashMap<>();
        items.stream()
                .filter(item -> !item.circuit().isStated())
                .forEach(item -> kinds.computeIfAbsent(item.kind(), any -> new ArrayList<>())
                        .add(item));
        List<Branch> branches = new ArrayList<>(circuits.branches());
        int least = branches.size();
        for (Map.Entry<Item.Kind, List<Item>> each : kinds.entrySet()) {
            least += bundle(each.getKey(), each.getValue(), branches);
        }
        if (branches.isEmpty()) {
            return branches;
        }
        notices.guess(branches.size() + (branches.size() == 1 ? " breaker" : " breakers") + "; no fewer than " + least
                + " can be enough for these rooms, roles, zones, feeds and outlets");
        if (mapping.curveOfBreakers().isEmpty()) {
            notices.guess(String.format(
                    Locale.ROOT,
                    "no trip band, as American breakers rarely state one; pieces share a breaker while their inrush"
                            + " counts for at most %.0f times its rating",
                    band.leastRatio()));
        }
        return branches;
    }

    /** @return the least number of breakers for the kind */
    private int bundle(Item.Kind kind, List<Item> items, List<Branch> branches) {
        List<Bundle.Piece> sharing = new ArrayList<>();
        int alone = 0;
        Bundle.Limits limits = limits(mapping.usualBreakerAmps());
        Optional<BreakerSizing.Breaker> shared = Optional.empty();
        for (Item item : items) {
            Optional<BreakerSizing.Breaker> breaker = sizing.of(item);
            if (breaker.isEmpty()) {
                notices.leaveOut(item.isFurther() ? 0 : item.quantity());
                continue;
            }
            Bundle.Piece piece = piece(item);
            Bundle.Limits own = limits(breaker.get().amps());
            if (!breaker.get().isAlone() && piece.size(own) <= 1 + 1e-9) {
                // One kind has one outlet, so that its shared breakers are equal.
                shared = breaker;
                limits = own;
                for (int i = 0; i < item.quantity(); i++) {
                    sharing.add(piece);
                }
                continue;
            }
            breaker.get().curve().ifPresent(curve -> askAboutInrush(item, piece, breaker.get(), curve));
            for (int i = 0; i < item.quantity(); i++) {
                branches.add(
                        new Branch(kind, breaker.get().amps(), breaker.get().curve(), List.of(item), false));
                alone++;
            }
        }
        if (shared.isEmpty()) {
            return alone;
        }
        BreakerSizing.Breaker each = shared.get();
        List<Bundle> packed = Packing.of(sharing, limits);
        packed.forEach(bundle ->
                branches.add(new Branch(kind, each.amps(), each.curve(), List.copyOf(bundle.pieces()), false)));
        boolean isOptimal = sharing.size() <= Packing.EXACT_PIECES;
        return alone + (isOptimal ? packed.size() : Packing.leastBundles(sharing, limits));
    }

    private void askAboutInrush(Item item, Bundle.Piece piece, BreakerSizing.Breaker breaker, TripCurve curve) {
        double holds = InstantaneousBand.of(curve).leastRatio() * breaker.amps();
        if (piece.tripAmps() > holds) {
            notices.add(new Notice(
                    Notice.Kind.QUESTION,
                    item.place(),
                    String.format(
                            Locale.ROOT,
                            "a piece of '%s' peaks at %.0f A, which counts for %.0f A at the trip; its breaker of %.0f"
                                    + " A, band %s, surely holds %.0f A only. No larger rating is taken for that: it would"
                                    + " not protect outlet and cord. Maybe a band that trips later, a device that limits"
                                    + " the inrush, or parts that come on one after another.",
                            item.name(),
                            item.inrushPeakAmps(),
                            piece.tripAmps(),
                            breaker.amps(),
                            curve,
                            holds)));
        }
    }

    private Bundle.Limits limits(double breakerAmps) {
        return new Bundle.Limits(mapping.continuousFraction() * breakerAmps, band.leastRatio() * breakerAmps);
    }

    private Bundle.Piece piece(Item item) {
        double counts = TripEquivalent.inrushAmps(
                item.idleAmps(),
                item.inrushPeakAmps(),
                item.gear().usual().halfMillis() / 1000,
                mapping.frequencyHertz());
        return new Bundle.Piece(item, item.amps(), counts);
    }
}
