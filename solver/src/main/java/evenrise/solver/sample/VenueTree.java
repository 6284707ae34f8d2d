package evenrise.solver.sample;

import evenrise.model.project.DistributionNode;
import evenrise.model.project.DistributionNodeBuilder;
import evenrise.model.project.NodeSource;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Secondary;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What stands between the supply and a drawn venue's panels; its nodes have no limits yet. */
final class VenueTree {
    /** Between a line and neutral at the panels. */
    static final double PANEL_VOLTS = 120;

    private static final double SERVICE_VOLTS = 277;
    private static final int EVERY = 3;

    final List<DistributionNode> nodes = new ArrayList<>();
    private final List<Optional<String>> feeds = new ArrayList<>();
    private final List<PhaseSystem> systems = new ArrayList<>();
    private final VenuePlant plant;

    VenueTree(VenuePlant plant, VenueZones zones, VenueSize size) {
        this.plant = plant;
        for (int zone = 0; zone < VenueZones.count(size.panels()); zone++) {
            String id = zones.zoneId(zone);
            int panels = Math.min(VenueZones.PANELS_IN_ZONE, size.panels() - zone * VenueZones.PANELS_IN_ZONE);
            zone(zone, id, panels, size.system());
        }
    }

    /** Node that feeds a panel; empty for the supply. */
    Optional<String> feeds(int panel) {
        return feeds.get(panel);
    }

    PhaseSystem system(int panel) {
        return systems.get(panel);
    }

    double supplyVolts() {
        return plant.has(PlantOption.TRANSFORMERS) ? SERVICE_VOLTS : PANEL_VOLTS;
    }

    private void zone(int zone, String id, int panels, PhaseSystem system) {
        Optional<String> feeds = Optional.empty();
        Optional<String> last = Optional.empty();
        if (zone == 0 && plant.has(PlantOption.SOURCE)) {
            feeds = add(node(id + "-own")
                    .source(Optional.of(NodeSource.builder()
                            .system(system)
                            .lineToNeutralVolts(PANEL_VOLTS)
                            .frequencyHertz(60)
                            .build()))
                    .build());
        } else if (plant.has(PlantOption.TRANSFORMERS)) {
            Optional<String> main = add(node(id + "-main").build());
            TransformerConnection connection =
                    zone % EVERY == 2 ? TransformerConnection.WYE_WYE : TransformerConnection.DELTA_WYE;
            feeds = add(transformer(id + "-208", main, connection, PhaseSystem.THREE_PHASE));
            if (zone % EVERY == 1 && panels > 1) {
                last = add(transformer(id + "-240", main, TransformerConnection.SINGLE, PhaseSystem.SPLIT_PHASE));
            }
        } else if (plant.has(PlantOption.NODES)) {
            feeds = add(node(id + "-main").build());
        }
        for (int panel = 1; panel <= panels; panel++) {
            boolean isSingle = panel == panels && last.isPresent();
            this.feeds.add(isSingle ? last : feeds);
            systems.add(isSingle ? PhaseSystem.SPLIT_PHASE : system);
        }
    }

    private Optional<String> add(DistributionNode node) {
        nodes.add(node);
        return Optional.of(node.id());
    }

    private static DistributionNodeBuilder node(String id) {
        return DistributionNode.builder().id(id).ratedAmps(Ratings.UNKNOWN_AMPS);
    }

    private static DistributionNode transformer(
            String id, Optional<String> from, TransformerConnection connection, PhaseSystem system) {
        return node(id).fedFrom(from)
                .transformer(Optional.of(Transformer.builder()
                        .connection(connection)
                        .secondary(new Secondary(system, PANEL_VOLTS))
                        .build()))
                .build();
    }
}
