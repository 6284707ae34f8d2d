package evenrise.model.electrical.source;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How far phasors may at most move the voltages from the steady ones, whatever the angle of each kind of inrush: a kind's
 * drops at nominal voltage add as phasors, as they turn together, and what an inrush draws differs from that by no more than
 * its own voltage does from nominal.
 */
final class Reach {
    /** More than how far voltages were found to lie from nominal, so that this is seen to hold itself up. */
    private static final double SLACK = 1.02;

    private final double[] volts;
    private final Map<String, Double> aways = new HashMap<>();

    static Reach of(
            UnitDrops units, SteadyVolts steady, DipBound bound, List<Inrush> inrushes, Map<Object, Integer> kinds) {
        return new Reach(units, inrushes, kinds, aways(units, steady, bound, inrushes));
    }

    /**
     * As inrush has died down: what no voltage was farther from nominal than, none is with less of it. More than need be, and
     * known at once.
     */
    Reach later(UnitDrops units, List<Inrush> left, Map<Object, Integer> kinds) {
        double[] same = left.stream()
                .mapToDouble(each ->
                        DipBound.star(each.drawn()) * aways.get(each.drawn().panel()))
                .toArray();
        return new Reach(units, left, kinds, same);
    }

    private Reach(UnitDrops units, List<Inrush> inrushes, Map<Object, Integer> kinds, double[] aways) {
        this.volts = new double[units.places()];
        for (int k = 0; k < aways.length; k++) {
            Drawn drawn = inrushes.get(k).drawn();
            this.aways.put(drawn.panel(), aways[k] / DipBound.star(drawn));
        }
        double[][] real = new double[kinds.size()][volts.length];
        double[][] imaginary = new double[kinds.size()][volts.length];
        for (int k = 0; k < inrushes.size(); k++) {
            Drawn drawn = inrushes.get(k).drawn();
            UnitDrops.Unit unit = units.of(drawn.panel(), drawn.phases());
            int kind = kinds.get(inrushes.get(k).kind());
            for (int i = 0; i < volts.length; i++) {
                real[kind][i] += drawn.amps() * unit.real()[i];
                imaginary[kind][i] += drawn.amps() * unit.imaginary()[i];
                volts[i] += aways[k] * drawn.amps() * unit.volts()[i];
            }
        }
        for (int kind = 0; kind < real.length; kind++) {
            for (int i = 0; i < volts.length; i++) {
                volts[i] += Math.sqrt(real[kind][i] * real[kind][i] + imaginary[kind][i] * imaginary[kind][i]);
            }
        }
    }

    double volts(int place) {
        return volts[place];
    }

    /**
     * Of each inrush, by how much its current may differ. Where no voltage is farther from nominal than is assumed if all
     * inrush draws what that allows, none is: it would have to pass there as inrush grows from nothing. Else each is as far as
     * it can be, since none meets more than twice its voltage.
     */
    private static double[] aways(UnitDrops units, SteadyVolts steady, DipBound bound, List<Inrush> inrushes) {
        double[] aways = new double[inrushes.size()];
        for (int k = 0; k < aways.length; k++) {
            Drawn drawn = inrushes.get(k).drawn();
            aways[k] = DipBound.star(drawn) * Math.min(1, SLACK * bound.away(drawn.panel()) + 1e-9);
        }
        for (int k = 0; k < aways.length; k++) {
            Drawn drawn = inrushes.get(k).drawn();
            double assumed = aways[k] / DipBound.star(drawn);
            for (Terminals at : units.terminals()) {
                int place = units.place(drawn.panel(), at);
                if (units.nominalVolts(place) > 0
                        && assumed < 1
                        && away(units, steady, inrushes, aways, place) > assumed) {
                    for (int each = 0; each < aways.length; each++) {
                        aways[each] = DipBound.star(inrushes.get(each).drawn());
                    }
                    return aways;
                }
            }
        }
        return aways;
    }

    private static double away(UnitDrops units, SteadyVolts steady, List<Inrush> inrushes, double[] aways, int place) {
        double sum = steady.awayVolts(place);
        for (int k = 0; k < aways.length; k++) {
            Drawn drawn = inrushes.get(k).drawn();
            sum += (1 + aways[k])
                    * drawn.amps()
                    * units.of(drawn.panel(), drawn.phases()).volts()[place];
        }
        return sum / units.nominalVolts(place);
    }
}
