package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.rules.SceneCurrents;

/**
 * A load as a phase of a node sees it: all ways to sit that show the same part of it.
 *
 * @param part of its current that the phase carries
 * @param there whether it sits in one of them
 */
record PhaseItem(Load load, double part, BoolVar there) {
    /** What it draws once its inrush is over, as a crest in units of the program. */
    long base() {
        return ExactModelUnits.amps(part * InrushEnvelope.of(load, 0).baseAmps());
    }

    /** What its inrush is above that. */
    long excess() {
        return ExactModelUnits.amps(part * InrushEnvelope.of(load, 0).excessAmps());
    }

    /** What it draws at most in any scene. */
    long use(SceneCurrents scenes) {
        return ExactModelUnits.amps(part * Math.sqrt(2) * Math.max(load.idleAmps(), scenes.mostAmps(load)));
    }
}
