package evenrise.solver.sample;

import evenrise.model.project.PhaseSystem;
import java.util.Locale;

/**
 * How large a venue to draw.
 *
 * @param panels 1 to {@value #MOST_PANELS}
 * @param loads {@value #FEWEST_LOADS} to {@value #MOST_LOADS} for each panel
 * @param system three-phase or split-phase
 */
public record VenueSize(int panels, int loads, PhaseSystem system) {
    public static final int MOST_PANELS = 800;
    /** Fewest loads a panel. */
    public static final int FEWEST_LOADS = 6;
    /** Most loads a panel. */
    public static final int MOST_LOADS = 30;
    /** Loads a panel where nobody says. */
    public static final int USUAL_LOADS = 24;

    public VenueSize {
        if (panels < 1 || panels > MOST_PANELS) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "a venue of %d panels, expected 1 to %d", panels, MOST_PANELS));
        }
        long fewest = (long) FEWEST_LOADS * panels;
        long most = (long) MOST_LOADS * panels;
        if (loads < fewest || loads > most) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "%d loads in %d panels, expected %d to %d. Maybe ask for %d panel(s).",
                    loads,
                    panels,
                    fewest,
                    most,
                    Math.max(1, Math.min(MOST_PANELS, (loads + USUAL_LOADS - 1) / USUAL_LOADS))));
        }
        if (system == PhaseSystem.SINGLE_PHASE) {
            throw new IllegalArgumentException("a single-phase venue, expected three-phase or split-phase");
        }
    }

    /** A three-phase venue with the usual number of loads a panel. */
    public static VenueSize ofPanels(int panels) {
        return new VenueSize(panels, USUAL_LOADS * panels, PhaseSystem.THREE_PHASE);
    }
}
