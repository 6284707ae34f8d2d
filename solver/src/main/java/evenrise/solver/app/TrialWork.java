package evenrise.solver.app;

import evenrise.model.review.Networks;
import evenrise.model.rules.Layout;
import evenrise.model.rules.SupplyVoltage;
import evenrise.model.scatter.Trials;
import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.portfolio.TrialTask;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.function.Consumer;

/** Draws the trials of a task: the bytes of what they come to. */
final class TrialWork implements GridWork {
    /** What is to be said of the files, whoever asks has said. */
    private static final Consumer<String> NOBODY = any -> {};

    @Override
    public byte[] output(byte[] input, StopSignal stop) throws InvalidInput {
        try {
            TrialTask task = TrialTask.of(input);
            AskedVersion.refuseOther(task.softwareVersion());
            Trials trials = none(AuditJob.Subject.of(
                            Source.stream(new ByteArrayInputStream(task.project()), "the project"),
                            Source.stream(new ByteArrayInputStream(task.plan()), "the plan"),
                            NOBODY)
                    .layout());
            trials.draw(task.from(), task.to(), task.seed(), stop::hasCome);
            return trials.bytes();
        } catch (IOException | JobFailed e) {
            throw new InvalidInput(e.getMessage());
        }
    }

    static Trials none(Layout layout) {
        return Trials.none(
                layout, SupplyVoltage.scatter(layout.project()), Networks.of(layout), Networks.ofTree(layout));
    }
}
