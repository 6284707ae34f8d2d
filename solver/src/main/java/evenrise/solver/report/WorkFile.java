package evenrise.solver.report;

import evenrise.model.contract.Field;
import evenrise.solver.rework.Breach;
import evenrise.solver.rework.OrderCost;
import evenrise.solver.rework.WorkOrder;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import java.util.ArrayList;
import java.util.List;

/** An order of work for other programs. */
public record WorkFile(
        @Field(meaning = "Name and version of this format") String format,

        @Field(meaning = "What whoever uses these figures has to know")
        List<String> cautions,

        @Field(meaning = "What the order costs, the dearest first")
        OrderCost cost,

        @Field(meaning = "Whether no order is cheaper, by a look at every one")
        boolean isProven,

        @Field(
                meaning = "What keeps the work from being done in smaller stages, or what is broken on the way; a line"
                        + " each")
        List<String> obstacles,

        @Field(meaning = "What is broken on the way and was whole at the start")
        List<Breach> breaches,

        @Field(meaning = "Stages, in their order") List<Stage> stages,

        @Field(meaning = "Who is out, and for how long") List<Outage> outages,

        @Field(
                meaning = "What no order of these changes stays below, number by number; that of loads locked out at"
                        + " once holds for orders that are as good in system offs and isolations")
        OrderCost least) {
    public static final String FORMAT = "evenrise-work/1";

    /** One stage of it. */
    public record Stage(
            @Field(meaning = "Number, from 1") int number,

            @Field(meaning = "Whether everything that boards switch is off meanwhile, by command")
            boolean isSystemOff,

            @Field(meaning = "Panels that are isolated meanwhile")
            List<String> deadPanels,

            @Field(meaning = "Boards that are isolated beside those in these panels")
            List<String> deadBoards,

            @Field(meaning = "Loads that are worked on") List<String> lockedOut,

            @Field(
                    meaning = "Loads that are off besides, by their panel or board or by what they need, and by no"
                            + " command")
            List<String> standingBy,

            @Field(
                    meaning = "Shutdown groups of which a load is off; loads without a group are together the one"
                            + " without a name")
            List<String> outages,

            @Field(meaning = "Places where the plant breaks a hard rule afterwards")
            int brokenAfter,

            @Field(meaning = "Steps, in their order") List<WorkStep> steps,

            @Field(meaning = "Panels and nodes that are dead besides, since an isolated panel feeds them")
            List<String> deadBelow,

            @Field(meaning = "Systems that are off by their commands; none where one command is for all")
            List<String> systemsOff,

            @Field(
                    meaning = "How long the stage takes one crew, by minutes of each kind of work as stated or by"
                            + " default")
            double minutes,

            @Field(meaning = "How long each step takes of that, in the order of steps; 0 where another step covers it")
            List<Double> stepMinutes) {}

    /** How long somebody is out. */
    public record Outage(
            @Field(meaning = "Shutdown group; empty for loads without one")
            String group,

            @Field(meaning = "Over all stages") double minutes) {}

    public static WorkFile of(List<String> cautions, WorkOrder order) {
        List<Stage> stages = new ArrayList<>();
        for (WorkStage each : order.stages()) {
            stages.add(new Stage(
                    stages.size() + 1,
                    each.isSystemOff(),
                    each.deadPanels(),
                    each.deadBoards(),
                    each.lockedOut(),
                    each.standingBy(),
                    each.outages(),
                    each.brokenAfter(),
                    each.steps(),
                    each.deadBelow(),
                    each.systemsOff(),
                    each.minutes(),
                    each.stepMinutes()));
        }
        return new WorkFile(
                FORMAT,
                cautions,
                order.cost(),
                order.isProven(),
                order.obstacles(),
                order.breaches(),
                stages,
                order.outMinutes().entrySet().stream()
                        .map(each -> new Outage(each.getKey(), each.getValue()))
                        .toList(),
                order.least());
    }
}
