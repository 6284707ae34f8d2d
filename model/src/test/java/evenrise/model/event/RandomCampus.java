package evenrise.model.event;

import evenrise.model.ARandomProject;
import evenrise.model.TestBehaviour;
import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.DistributionNodeBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Overlap;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * A random plant with a plan that keeps its order, spread over a distribution: nodes, transformers that draw inrush, a
 * further source; boards that follow each other are one system, with a command of its own, which may need others.
 */
final class RandomCampus {
    private final Random random;
    private final ARandomProject.Planted planted;
    private final Map<String, String> systemOf = new HashMap<>();
    private final List<SwitchedSystem> systems = new ArrayList<>();

    private RandomCampus(int seed) {
        random = new Random(seed * 77L + 5);
        planted = ARandomProject.planted(seed);
    }

    static Layout layout(int seed, boolean usual) {
        RandomCampus campus = new RandomCampus(seed);
        Behaviour behaviour = usual ? Behaviour.DEFAULT : TestBehaviour.any(campus.random);
        return campus.layout(behaviour);
    }

    static Layout layout(int seed, Behaviour behaviour) {
        return new RandomCampus(seed).layout(behaviour);
    }

    private Layout layout(Behaviour behaviour) {
        Project flat = planted.project();
        drawSystems(flat);
        Map<String, Load> loads = new HashMap<>();
        flat.loads().forEach(each -> loads.put(each.id(), each));
        List<DistributionNode> nodes = nodes(flat);
        List<String> feeds = new ArrayList<>(List.of("supply"));
        nodes.forEach(each -> feeds.add(each.id()));
        Project project = flat.with()
                .behaviour(behaviour)
                .nodes(nodes)
                .panels(flat.panels().stream()
                        .map(each -> each.withFedFrom(Optional.of(feeds.get(random.nextInt(feeds.size())))))
                        .toList())
                .systems(systems)
                .overlap(Overlap.values()[random.nextInt(3)])
                .boards(flat.boards().stream()
                        .map(each -> random.nextInt(4) > 0
                                ? each
                                : each.withFedBy(Optional.of(feeds.get(random.nextInt(feeds.size())))))
                        .toList())
                .loads(flat.loads().stream().map(each -> of(each, loads)).toList())
                .build();
        return Layout.of(project, planted.plan());
    }

    /** A load is of the system of its board; it comes after no load of another. */
    private Load of(Load load, Map<String, Load> loads) {
        Optional<String> system = system(load);
        return load.with()
                .system(system)
                .comesAfter(load.comesAfter().stream()
                        .filter(each -> system(loads.get(each)).equals(system))
                        .toList())
                .build();
    }

    private Optional<String> system(Load load) {
        return planted.plan().assignments().stream()
                .filter(each -> each.load().equals(load.id()))
                .flatMap(each -> each.board().stream())
                .findFirst()
                .map(systemOf::get);
    }

    private void drawSystems(Project flat) {
        for (Board board : flat.boards()) { // a board only follows an earlier one
            String system = board.after().map(systemOf::get).orElseGet(() -> {
                boolean isNew = systems.isEmpty() || random.nextInt(3) > 0;
                return isNew
                        ? newSystem()
                        : systems.get(random.nextInt(systems.size())).id();
            });
            systemOf.put(board.id(), system);
        }
    }

    private String newSystem() {
        String id = "S" + systems.size();
        systems.add(SwitchedSystem.builder()
                .id(id)
                .needs(systems.stream()
                        .map(SwitchedSystem::id)
                        .filter(any -> random.nextInt(3) == 0)
                        .toList())
                .build());
        return id;
    }

    private List<DistributionNode> nodes(Project flat) {
        PhaseSystem system = flat.supply().system();
        List<DistributionNode> nodes = new ArrayList<>();
        for (int i = random.nextInt(5); i > 0; i--) {
            List<String> feeds = new ArrayList<>(List.of("supply"));
            nodes.forEach(each -> feeds.add(each.id()));
            DistributionNodeBuilder node =
                    DistributionNode.builder().id("N" + nodes.size()).ratedAmps(1000);
            int kind = random.nextInt(6);
            if (kind == 0) {
                node.source(NodeSource.builder()
                        .system(system)
                        .lineToNeutralVolts(100)
                        .frequencyHertz(60)
                        .build());
            } else {
                node.fedFrom(feeds.get(random.nextInt(feeds.size())));
            }
            if (kind > 2) {
                node.transformer(transformer(system));
            }
            nodes.add(node.build());
        }
        return nodes;
    }

    private Transformer transformer(PhaseSystem system) {
        boolean isSingle = system != PhaseSystem.THREE_PHASE;
        return Transformer.builder()
                .connection(
                        isSingle
                                ? TransformerConnection.SINGLE
                                : random.nextBoolean()
                                        ? TransformerConnection.DELTA_WYE
                                        : TransformerConnection.WYE_WYE)
                .shiftDegrees(random.nextBoolean() ? 30 : -30)
                .secondary(Secondary.builder()
                        .system(system)
                        .lineToNeutralVolts(80 + random.nextInt(100))
                        .build())
                .inrushPeakAmps(OptionalDouble.of(1 + random.nextInt(400)))
                .inrushHalfMillis(1 + random.nextInt(3000))
                .build();
    }
}
