package evenrise.solver.document;

import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Supply;
import java.util.List;

/**
 * Colours of conductors, by the practice that fits voltage and frequency; black is drawn as a dark grey.
 *
 * @param source names the practice
 */
record PhaseColours(List<String> colours, String source) {
    static PhaseColours of(Supply supply) {
        if (supply.frequencyHertz() < 55) {
            return new PhaseColours(
                    List.of("#8a5a2b", "#2b2b2b", "#8f8f8f"),
                    "Phase colours of conductors: brown, black, grey (IEC 60445)");
        }
        return supply.lineToNeutralVolts() > 200 && supply.system() == PhaseSystem.THREE_PHASE
                ? new PhaseColours(
                        List.of("#8a5a2b", "#d9822b", "#c9b400"),
                        "Phase colours of conductors: brown, orange, yellow (practice in the United States above 150 V to ground)")
                : new PhaseColours(
                        List.of("#2b2b2b", "#b3261e", "#1f4fa3"),
                        "Phase colours of conductors: black, red, blue (practice in the United States)");
    }
}
