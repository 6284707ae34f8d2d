package evenrise.model.electrical.source;

/**
 * The range of what one inrush may draw: an angle between a resistance and a reactance, and further by as much as its own
 * voltage may turn, times a current that its voltage may raise.
 */
final class InrushRange {
    private final Drawn drawn;
    private final UnitDrops.Unit unit;
    private final double amps;
    private final double star;
    private double grown;
    private double turned;
    private Ends ends;

    /** Of a range, by how far it goes beyond a resistance and a reactance. */
    private record Ends(double cosine, double sine, double cosineOfHalf) {
        static Ends of(double turnedRadians) {
            return new Ends(
                    Math.cos(turnedRadians),
                    Math.sin(turnedRadians),
                    Math.cos(Math.min(Math.PI, Math.PI / 4 + turnedRadians)));
        }
    }

    InrushRange(Drawn drawn, UnitDrops.Unit unit) {
        this.drawn = drawn;
        this.unit = unit;
        double part = drawn.amps() * unit.most();
        // More than a fault's current does not flow.
        this.amps = part > 1 ? drawn.amps() / part : drawn.amps();
        this.star = DipBound.star(drawn);
    }

    /** At its panel, those that feed it. */
    int[] ownPlaces() {
        return unit.ownPlaces();
    }

    /** See {@link DipBound#STAR}. */
    double star() {
        return star;
    }

    Drawn drawn() {
        return drawn;
    }

    double grown() {
        return grown;
    }

    double turned() {
        return turned;
    }

    void grow(double by, double turnedRadians) {
        grown = by;
        turned = turnedRadians;
        ends = Ends.of(turned);
    }

    /** In phase with its own voltage, at nominal voltage. */
    double dropVolts(int place) {
        return amps * unit.volts()[place];
    }

    /**
     * The most of its drop along a direction of length 1, over the range of its angle: all of it where the direction is
     * within, else what its nearer end has.
     */
    double along(int place, double real, double imaginary) {
        return along(place, real, imaginary, ends);
    }

    /** The same along any direction that is within so much of that one. */
    double alongAbout(int place, double real, double imaginary, double withinRadians) {
        return along(place, real, imaginary, Ends.of(turned + withinRadians));
    }

    private double along(int place, double real, double imaginary, Ends within) {
        double volts = unit.volts()[place];
        if (volts == 0) {
            return 0;
        }
        double with = unit.real()[place] * real + unit.imaginary()[place] * imaginary;
        double ahead = unit.imaginary()[place] * real - unit.real()[place] * imaginary;
        double most = (with + ahead) * Math.sqrt(0.5) >= volts * within.cosineOfHalf
                ? volts
                : Math.max(
                        0,
                        Math.max(
                                with * within.cosine - ahead * within.sine,
                                ahead * within.cosine - with * within.sine));
        return grown * amps * most;
    }
}
