package evenrise.solver.grid.ignite;

import evenrise.solver.grid.AnswerBytes;
import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.StopSignal;
import org.apache.ignite.Ignite;
import org.apache.ignite.compute.ComputeJob;
import org.apache.ignite.compute.ComputeJobMasterLeaveAware;
import org.apache.ignite.compute.ComputeTaskSession;
import org.apache.ignite.resources.IgniteInstanceResource;

/** A job on its way: the bytes that go in. What the worker makes of them, it finds where it runs. */
final class RemoteJob implements ComputeJob, ComputeJobMasterLeaveAware {
    private static final long serialVersionUID = 1;

    private final byte[] input;
    private transient StopSignal stop;

    @IgniteInstanceResource
    private transient Ignite node;

    RemoteJob(byte[] input) {
        this.input = input;
    }

    @Override
    public Object execute() {
        SameSoftware.Work here = node.plugin(SameSoftware.NAME);
        GridWork work = here.work().orElseThrow(() -> new IllegalStateException("this process takes no jobs"));
        GridAnswer answer = GridAnswer.of(work, input, stopSignal());
        // What was stopped is not what would have come out.
        return stopSignal().hasCome() ? AnswerBytes.ofStopped() : AnswerBytes.of(answer);
    }

    @Override
    public void cancel() {
        stopSignal().stop();
    }

    /** Nobody waits for it any more. */
    @Override
    public void onMasterNodeLeft(ComputeTaskSession session) {
        stopSignal().stop();
    }

    private synchronized StopSignal stopSignal() {
        if (stop == null) {
            stop = new StopSignal();
        }
        return stop;
    }
}
