package evenrise.solver.intake;

import java.util.ArrayList;
import java.util.List;

/** Pieces on one breaker. */
final class Bundle {
    private final List<Item> pieces = new ArrayList<>();
    private double amps;
    private double tripAmps;

    void add(Piece piece) {
        pieces.add(piece.item());
        amps += piece.amps();
        tripAmps += piece.tripAmps();
    }

    void removeLast(Piece piece) {
        pieces.remove(pieces.size() - 1);
        amps -= piece.amps();
        tripAmps -= piece.tripAmps();
    }

    Bundle copy() {
        Bundle copy = new Bundle();
        copy.pieces.addAll(pieces);
        copy.amps = amps;
        copy.tripAmps = tripAmps;
        return copy;
    }

    boolean hasRoom(Piece piece, Limits limits) {
        return amps + piece.amps() <= limits.amps() + 1e-9 && tripAmps + piece.tripAmps() <= limits.tripAmps() + 1e-9;
    }

    List<Item> pieces() {
        return pieces;
    }

    double amps() {
        return amps;
    }

    double tripAmps() {
        return tripAmps;
    }

    /**
     * One piece as bin packing sees it.
     *
     * @param tripAmps rms that its inrush counts for at an instantaneous trip
     */
    record Piece(Item item, double amps, double tripAmps) {
        boolean isLike(Piece other) {
            return amps == other.amps && tripAmps == other.tripAmps;
        }

        /** The greater of its two sizes. */
        double size(Limits limits) {
            return Math.max(amps / limits.amps(), tripAmps / limits.tripAmps());
        }
    }

    /** What one breaker takes. */
    record Limits(double amps, double tripAmps) {}
}
