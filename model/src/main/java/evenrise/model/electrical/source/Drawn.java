package evenrise.model.electrical.source;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.Phase;
import java.util.List;

/**
 * A current that loads of one panel draw together on the same lines.
 *
 * @param amps rms in each of the lines, at nominal voltage
 */
public record Drawn(String panel, List<Phase> phases, double amps) {
    /** The current of each line where it is in phase with the voltage that feeds it. */
    public LineValues lines(LineValues nominal) {
        if (phases.size() == 2) {
            Phasor between = nominal.line(phases.get(0)).minus(nominal.line(phases.get(1)));
            Phasor current = between.times(amps / between.length());
            return LineValues.of(phase ->
                    phase == phases.get(0) ? current : phase == phases.get(1) ? current.times(-1) : Phasor.ZERO);
        }
        return LineValues.of(phase -> phases.contains(phase)
                ? nominal.line(phase).times(amps / nominal.line(phase).length())
                : Phasor.ZERO);
    }

    /** The conductances that draw it: to neutral, between two lines, or of a star without neutral. */
    public LineMatrix siemens(LineValues nominal) {
        int poles = phases.size();
        double volts = poles == 2
                ? nominal.line(phases.get(0)).minus(nominal.line(phases.get(1))).length()
                : nominal.line(phases.get(0)).length();
        double siemens = amps / volts;
        double own = poles == 3 ? 2 * siemens / 3 : siemens;
        double across = poles == 3 ? -siemens / 3 : -siemens;
        Phase[] all = Phase.values();
        return LineMatrix.of((i, j) -> !phases.contains(all[i]) || !phases.contains(all[j])
                ? Phasor.ZERO
                : new Phasor(i == j ? own : across, 0));
    }
}
