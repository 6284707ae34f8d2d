package evenrise.solver.sample;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Names of a venue's zones; some panels stand in each. With systems, the first zone is the core, then each hall has two. */
final class VenueZones {
    static final int PANELS_IN_ZONE = 4;
    private static final int ZONES_IN_HALL = 2;

    private static final String CORE = "Core";
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
    private static final List<String> HALLS =
            List.of("Alder", "Birch", "Cedar", "Damson", "Elder", "Fir", "Gorse", "Hazel", "Ivy", "Juniper");
    private static final List<String> PARTS = List.of("stage", "house");

    private final boolean hasSystems;

    VenueZones(boolean hasSystems) {
        this.hasSystems = hasSystems;
    }

    /** How many zones {@code panels} stand in. */
    static int count(int panels) {
        return (panels + PANELS_IN_ZONE - 1) / PANELS_IN_ZONE;
    }

    static int zone(int panel) {
        return panel / PANELS_IN_ZONE;
    }

    /** The place of a panel, counted from 0, for people. */
    String name(int panel) {
        return zoneName(zone(panel)) + " " + (char) ('A' + panel % PANELS_IN_ZONE);
    }

    /** The place of a panel as an id. */
    String id(int panel) {
        return asId(name(panel));
    }

    /** A zone as the beginning of ids. */
    String zoneId(int zone) {
        return asId(zoneName(zone));
    }

    /** The hall that a panel stands in, as an id: what one command switches. */
    String hallId(int panel) {
        int zone = zone(panel);
        return asId(zone == 0 ? CORE : hallName(zone));
    }

    /** The panels of the zone of {@code panel} that a venue of {@code panels} has. */
    List<String> zoneOf(int panel, int panels) {
        int first = zone(panel) * PANELS_IN_ZONE;
        return IntStream.range(first, Math.min(panels, first + PANELS_IN_ZONE))
                .mapToObj(this::id)
                .toList();
    }

    private String zoneName(int zone) {
        if (!hasSystems) {
            return levelled(ZONES, zone);
        }
        return zone == 0 ? CORE : hallName(zone) + " " + PARTS.get((zone - 1) % ZONES_IN_HALL);
    }

    private static String hallName(int zone) {
        return levelled(HALLS, (zone - 1) / ZONES_IN_HALL);
    }

    private static String levelled(List<String> names, int index) {
        int level = index / names.size() + 1;
        return names.get(index % names.size()) + (level > 1 ? " level " + level : "");
    }

    private static String asId(String name) {
        return name.toLowerCase(Locale.ROOT).replace(' ', '-');
    }
}
