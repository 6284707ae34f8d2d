package evenrise.solver.sample;

import java.util.List;
import java.util.Locale;

/** Names of a venue's zones; some panels stand in each. */
final class VenueZones {
    static final int PANELS_IN_ZONE = 4;

    private static final List<String> ZONES = List.of(
            "North stand",
            "East stand",
            "South stand",
            "West stand",
            "Main stage",
            "Roof ring",
            "Concourse",
            "Media deck",
            "Club lounge",
            "Practice hall",
            "Harbour plaza",
            "Loading dock");

    private VenueZones() {}

    /** The place of a panel, counted from 0, for people. */
    static String name(int panel) {
        int zone = panel / PANELS_IN_ZONE;
        int level = zone / ZONES.size() + 1;
        return ZONES.get(zone % ZONES.size()) + (level > 1 ? " level " + level : "") + " "
                + (char) ('A' + panel % PANELS_IN_ZONE);
    }

    /** The place of a panel as an id. */
    static String id(int panel) {
        return name(panel).toLowerCase(Locale.ROOT).replace(' ', '-');
    }

    /** The panels of the zone of {@code panel} that a venue of {@code panels} has. */
    static List<String> zoneOf(int panel, int panels) {
        int first = panel / PANELS_IN_ZONE * PANELS_IN_ZONE;
        return java.util.stream.IntStream.range(first, Math.min(panels, first + PANELS_IN_ZONE))
                .mapToObj(VenueZones::id)
                .toList();
    }
}
