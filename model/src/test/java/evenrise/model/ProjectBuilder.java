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
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.Supply;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Lists grow with each call. Without panels it has P1, without loads L1, with boards but no types the type eight. */
public final class ProjectBuilder {
    private String name = "Test";
    private Supply supply = Fixtures.aSupply().build();
    private double timingToleranceSeconds = 0;
    private OptionalDouble maxDurationSeconds = OptionalDouble.empty();
    private final List<Panel> panels = new ArrayList<>();
    private final List<BoardType> boardTypes = new ArrayList<>();
    private final List<Board> boards = new ArrayList<>();
    private final List<ShutdownGroup> shutdownGroups = new ArrayList<>();
    private final List<Load> loads = new ArrayList<>();
    private ObjectiveWeights objective = ObjectiveWeights.DEFAULT;
    private Optional<Behaviour> behaviour = Optional.empty();
    private Optional<Catalogue> catalogue = Optional.empty();
    private Optional<Electrical> electrical = Optional.empty();

    ProjectBuilder() {}

    public ProjectBuilder name(String it) {
        name = it;
        return this;
    }

    public ProjectBuilder supply(SupplyBuilder it) {
        supply = it.build();
        return this;
    }

    public ProjectBuilder timingToleranceSeconds(double it) {
        timingToleranceSeconds = it;
        return this;
    }

    public ProjectBuilder maxDurationSeconds(double it) {
        maxDurationSeconds = OptionalDouble.of(it);
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
        objective = it;
        return this;
    }

    public ProjectBuilder electrical(Electrical it) {
        electrical = Optional.of(it);
        return this;
    }

    public ProjectBuilder behaviour(Behaviour it) {
        behaviour = Optional.of(it);
        return this;
    }

    public ProjectBuilder catalogue(Catalogue it) {
        catalogue = Optional.of(it);
        return this;
    }

    public Project build() {
        return new Project(
                Project.FORMAT,
                name,
                supply,
                timingToleranceSeconds,
                maxDurationSeconds,
                panels.isEmpty() ? List.of(Fixtures.aPanel().build()) : panels,
                boardTypes.isEmpty() && !boards.isEmpty()
                        ? List.of(Fixtures.aBoardType().build())
                        : boardTypes,
                boards,
                shutdownGroups,
                loads.isEmpty() ? List.of(Fixtures.aLoad().unswitched().build()) : loads,
                objective,
                electrical,
                behaviour,
                catalogue,
                Optional.empty());
    }
}
