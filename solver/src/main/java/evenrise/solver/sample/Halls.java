package evenrise.solver.sample;

import evenrise.model.project.Overlap;
import evenrise.model.project.Role;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import evenrise.model.project.SwitchedSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The systems of a drawn venue, each needing the core, and the scenes in which it is used. */
final class Halls {
    private final VenuePlant plant;
    private final VenueZones zones;
    private final List<String> ids = new ArrayList<>();

    Halls(VenuePlant plant, VenueZones zones, int panels) {
        this.plant = plant;
        this.zones = zones;
        for (int panel = 0; panel < panels && plant.has(PlantOption.SYSTEMS); panel++) {
            if (!ids.contains(zones.hallId(panel))) {
                ids.add(zones.hallId(panel));
            }
        }
    }

    /** What the loads of a panel belong to. */
    Optional<String> system(int panel) {
        return plant.has(PlantOption.SYSTEMS) ? Optional.of(zones.hallId(panel)) : Optional.empty();
    }

    /** Whether a load of one panel may come after one of another. */
    boolean canWait(Optional<String> system, Optional<String> other) {
        return system.equals(other) || plant.overlap() == Overlap.TOGETHER;
    }

    List<SwitchedSystem> systems() {
        return ids.stream()
                .map(id -> new SwitchedSystem(id, id.equals(ids.get(0)) ? List.of() : List.of(ids.get(0))))
                .toList();
    }

    List<Scene> scenes() {
        if (!plant.has(PlantOption.SCENES)) {
            return List.of();
        }
        List<Scene> scenes = new ArrayList<>(List.of(
                Scene.builder().id("show").weight(3).build(),
                Scene.builder()
                        .id("speech")
                        .weight(2)
                        .others(0.8)
                        .use(List.of(use(Role.AMPLIFIER, Optional.empty(), 0.3)))
                        .build(),
                Scene.builder()
                        .id("night")
                        .weight(0.5)
                        .others(0.1)
                        .use(List.of(use(Role.PROCESSING, Optional.empty(), 1)))
                        .build()));
        if (ids.size() > 1) {
            String hall = ids.get(ids.size() - 1);
            scenes.add(Scene.builder()
                    .id(hall + "-rests")
                    .weight(1)
                    .use(List.of(use(Role.AMPLIFIER, Optional.of(hall), 0.05)))
                    .build());
        }
        return scenes;
    }

    private static SceneUse use(Role role, Optional<String> system, double factor) {
        return SceneUse.builder()
                .role(Optional.of(role))
                .system(system)
                .factor(factor)
                .build();
    }
}
