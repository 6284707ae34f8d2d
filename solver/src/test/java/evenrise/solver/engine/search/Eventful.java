package evenrise.solver.engine.search;

import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.project.Panel;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.Resume;
import evenrise.model.project.Supply;
import evenrise.model.project.Transformer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** Projects whose inrush limits, wider than before, hold for some events, too. */
final class Eventful {
    private Eventful() {}

    /** The same project with a limit at the supply and at most panels. */
    static Project of(Project project, long seed) {
        Random random = new Random(seed);
        double peaks = project.loads().stream()
                .mapToDouble(load -> Math.max(load.inrushAmps(), Math.sqrt(2) * load.idleAmps()))
                .sum();
        List<PlanEvent> asked = new ArrayList<>();
        for (PlanEvent each : PlanEvent.values()) {
            if (random.nextInt(3) > 0) {
                asked.add(each);
            }
        }
        Supply old = project.supply();
        Supply supply = old.withInrushLimitAmps(limit(random, peaks));
        List<Panel> panels = project.panels().stream()
                .map(panel -> panel.withInrushLimitAmps(
                        random.nextInt(4) == 0 ? OptionalDouble.empty() : ofPart(random, peaks)))
                .toList();
        Equipment motor = Equipment.builder().motor(Motor.builder().build()).build();
        return project.with()
                .loads(project.loads().stream()
                        .map(load -> random.nextInt(4) == 0
                                ? load.with().equipment(motor).build()
                                : load)
                        .toList())
                .supply(supply)
                .panels(panels)
                .nodes(nodes(random, project.nodes(), peaks))
                .boards(project.boards().stream()
                        .map(board -> fed(random, board, project))
                        .toList())
                .behaviour(behaviour(random, asked))
                .build();
    }

    /** Of a panel or node, which feeds a part alone. */
    private static OptionalDouble ofPart(Random random, double peaks) {
        return limit(random, peaks * (0.2 + 0.8 * random.nextDouble()));
    }

    private static OptionalDouble limit(Random random, double peaks) {
        return OptionalDouble.of(peaks * (0.05 + 0.8 * random.nextDouble()));
    }

    /** Most with a limit, and transformers that draw something when they are energised. */
    private static List<DistributionNode> nodes(Random random, List<DistributionNode> nodes, double peaks) {
        return nodes.stream()
                .map(node -> node.with()
                        .inrushLimitAmps(random.nextInt(4) == 0 ? OptionalDouble.empty() : ofPart(random, peaks))
                        .transformer(node.transformer().map(each -> energised(random, each, peaks)))
                        .build())
                .toList();
    }

    private static Transformer energised(Random random, Transformer transformer, double peaks) {
        return transformer
                .with()
                .inrushPeakAmps(random.nextInt(3) == 0 ? OptionalDouble.empty() : limit(random, peaks / 4))
                .inrushHalfMillis(random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(60))
                .build();
    }

    /** Some boards are fed by another panel or node, or by a load that is always on. */
    private static Board fed(Random random, Board board, Project project) {
        List<String> choice = new ArrayList<>();
        project.panels().forEach(each -> choice.add(each.id()));
        project.nodes().forEach(each -> choice.add(each.id()));
        project.loads().stream().filter(each -> !each.switched()).forEach(each -> choice.add(each.id()));
        return random.nextBoolean() ? board : board.withFedBy(Optional.of(choice.get(random.nextInt(choice.size()))));
    }

    private static Behaviour behaviour(Random random, List<PlanEvent> asked) {
        Behaviour it = Behaviour.DEFAULT;
        return it.with()
                .steadyWaitSeconds(random.nextBoolean() ? 5 : random.nextDouble())
                .betweenSystemsSeconds(random.nextBoolean() ? 5 : random.nextDouble())
                .deadBoard(random.nextInt(3) > 0 ? DeadBoard.CARRY_ON : DeadBoard.STOP)
                .deadContacts(random.nextInt(3) > 0 ? DeadContacts.STAY : DeadContacts.OPEN)
                .inrushLimitHoldsFor(asked)
                .motorsResume(random.nextBoolean() ? Optional.empty() : Optional.of(Resume.STAY_OFF))
                .build();
    }
}
