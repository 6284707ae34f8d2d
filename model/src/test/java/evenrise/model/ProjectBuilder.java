package evenrise.model;

import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Scatter;
import evenrise.model.project.ShutdownGroup;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** Lists grow with each call. Without panels it has P1, without loads L1, with boards but no types the type eight. */
public final class ProjectBuilder {
    private final evenrise.model.project.ProjectBuilder made =
            Project.builder().name("Test").supply(Fixtures.aSupply().build());
    private final List<Panel> panels = new ArrayList<>();
    private final List<BoardType> boardTypes = new ArrayList<>();
    private final List<Board> boards = new ArrayList<>();
    private final List<ShutdownGroup> shutdownGroups = new ArrayList<>();
    private final List<Load> loads = new ArrayList<>();

    ProjectBuilder() {}

    public ProjectBuilder name(String it) {
        made.name(it);
        return this;
    }

    public ProjectBuilder supply(SupplyBuilder it) {
        made.supply(it.build());
        return this;
    }

    public ProjectBuilder timingToleranceSeconds(double it) {
        made.timingToleranceSeconds(it);
        return this;
    }

    public ProjectBuilder maxDurationSeconds(double it) {
        made.maxDurationSeconds(it);
        return this;
    }

    public ProjectBuilder panels(PanelBuilder... more) {
        for (PanelBuilder panel : more) {
            panels.add(panel.build());
        }
        return this;
    }

    public ProjectBuilder boardTypes(BoardTypeBuilder... more) {
        for (BoardTypeBuilder type : more) {
            boardTypes.add(type.build());
        }
        return this;
    }

    public ProjectBuilder boards(BoardBuilder... more) {
        for (BoardBuilder board : more) {
            boards.add(board.build());
        }
        return this;
    }

    public ProjectBuilder groups(GroupBuilder... more) {
        for (GroupBuilder group : more) {
            shutdownGroups.add(group.build());
        }
        return this;
    }

    public ProjectBuilder loads(LoadBuilder... more) {
        for (LoadBuilder load : more) {
            loads.add(load.build());
        }
        return this;
    }

    public ProjectBuilder loads(List<LoadBuilder> more) {
        return loads(more.toArray(LoadBuilder[]::new));
    }

    public ProjectBuilder objective(ObjectiveWeights it) {
        made.objective(it);
        return this;
    }

    public ProjectBuilder scatter(Scatter it) {
        made.scatter(it);
        return this;
    }

    public ProjectBuilder electrical(Electrical it) {
        made.electrical(it);
        return this;
    }

    public ProjectBuilder behaviour(Behaviour it) {
        made.behaviour(it);
        return this;
    }

    public ProjectBuilder catalogue(Catalogue it) {
        made.catalogue(it);
        return this;
    }

    /** Sets what has no method of its own here. */
    public ProjectBuilder with(Consumer<evenrise.model.project.ProjectBuilder> more) {
        more.accept(made);
        return this;
    }

    public Project build() {
        return made.panels(panels.isEmpty() ? List.of(Fixtures.aPanel().build()) : panels)
                .boardTypes(
                        boardTypes.isEmpty() && !boards.isEmpty()
                                ? List.of(Fixtures.aBoardType().build())
                                : boardTypes)
                .boards(boards)
                .shutdownGroups(shutdownGroups)
                .loads(loads.isEmpty() ? List.of(Fixtures.aLoad().unswitched().build()) : loads)
                .build();
    }
}
