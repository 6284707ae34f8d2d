package evenrise.solver.intake;

import evenrise.model.electrical.breaker.InstantaneousBand;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Practice;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Puts pieces of one room, role, zone, feed and number of poles onto the fewest breakers. */
final class Bundler {
    /** Time in which an inrush halves, where a list says nothing of it; common practice, no source. */
    static final double HALF_MILLIS = 3;

    private static final double LARGEST_BREAKER_AMPS = 63;

    private final Mapping mapping;
    private final Practice practice;
    private final InstantaneousBand band;
    private final List<Notice> notices = new ArrayList<>();

    Bundler(Mapping mapping) {
        this.mapping = mapping;
        this.practice = mapping.lineToNeutralVolts() > 200 ? Practice.IEC : Practice.NEC;
        this.band = InstantaneousBand.of(mapping.curve());
    }

    /**
     * One breaker with what is on it.
     */
    record Branch(Item.Kind kind, double breakerAmps, List<Item> pieces) {}

    List<Notice> notices() {
        return notices;
    }

    List<Branch> bundle(List<Item> items) {
        Map<Item.Kind, List<Item>> kinds = new LinkedHashMap<>();
        items.forEach(item ->
                kinds.computeIfAbsent(item.kind(), any -> new ArrayList<>()).add(item));
        List<Branch> branches = new ArrayList<>();
        int least = 0;
        for (Map.Entry<Item.Kind, List<Item>> each : kinds.entrySet()) {
            least += bundle(each.getKey(), each.getValue(), branches);
        }
        notices.add(Notice.guess(branches.size() + " breakers; no fewer than " + least
                + " can be enough for these rooms, roles, zones and feeds"));
        return branches;
    }

    /** @return the least number of breakers for the kind */
    private int bundle(Item.Kind kind, List<Item> items, List<Branch> branches) {
        double usual = mapping.usualBreakerAmps();
        Bundle.Limits limits = limits(usual);
        List<Bundle.Piece> sharing = new ArrayList<>();
        int alone = 0;
        for (Item item : items) {
            Bundle.Piece piece = piece(item);
            if (piece.size(limits) <= 1 + 1e-9) {
                for (int i = 0; i < item.quantity(); i++) {
                    sharing.add(piece);
                }
                continue;
            }
            OptionalDouble rating = own(piece);
            if (rating.isEmpty()) {
                notices.add(new Notice(
                        true,
                        item.place(),
                        String.format(
                                java.util.Locale.ROOT,
                                "a piece of '%s' runs at %.2f A with an inrush of %.0f A; no breaker up to %.0f A of band %s holds "
                                        + "that. Maybe it has a feed of its own, or its inrush is limited.",
                                item.name(),
                                item.amps(),
                                item.inrushPeakAmps(),
                                LARGEST_BREAKER_AMPS,
                                mapping.curve())));
                continue;
            }
            for (int i = 0; i < item.quantity(); i++) {
                branches.add(new Branch(kind, rating.getAsDouble(), List.of(item)));
                alone++;
            }
        }
        List<Bundle> packed = Packing.of(sharing, limits);
        packed.forEach(bundle -> branches.add(new Branch(kind, usual, List.copyOf(bundle.pieces()))));
        boolean isOptimal = sharing.size() <= Packing.EXACT_PIECES;
        return alone + (isOptimal ? packed.size() : Packing.leastBundles(sharing, limits));
    }

    private OptionalDouble own(Bundle.Piece piece) {
        double rating = mapping.usualBreakerAmps();
        while (true) {
            OptionalDouble next = StandardRatings.atLeast(practice, rating + 1e-6);
            if (next.isEmpty() || next.getAsDouble() > LARGEST_BREAKER_AMPS) {
                return OptionalDouble.empty();
            }
            rating = next.getAsDouble();
            if (piece.size(limits(rating)) <= 1 + 1e-9) {
                return next;
            }
        }
    }

    private Bundle.Limits limits(double breakerAmps) {
        return new Bundle.Limits(mapping.continuousFraction() * breakerAmps, band.leastRatio() * breakerAmps);
    }

    private Bundle.Piece piece(Item item) {
        double counts = TripEquivalent.inrushAmps(
                item.idleAmps(), item.inrushPeakAmps(), HALF_MILLIS / 1000, mapping.frequencyHertz());
        return new Bundle.Piece(item, item.amps(), counts);
    }
}
