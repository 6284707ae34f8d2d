package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridSite;
import evenrise.solver.grid.GridUnavailable;

/** Says in words of the trade why somebody could not join. */
final class JoinFailure {
    private JoinFailure() {}

    static GridUnavailable of(GridSite site, Throwable failure) {
        StringBuilder all = new StringBuilder();
        for (Throwable each = failure; each != null; each = each.getCause()) {
            all.append(each.getMessage()).append('\n');
        }
        String said = all.toString();
        int refused = said.indexOf(SameSoftware.REFUSED);
        if (refused >= 0) {
            String rest = said.substring(refused + SameSoftware.REFUSED.length());
            String line = rest.lines().findFirst().orElse("").replaceAll(" \\[.*", "");
            return new GridUnavailable(
                    "refused at " + site.hosts() + ": " + line
                            + ". All who take part run one and the same version with the same parts.",
                    failure);
        }
        if (said.contains("secure connection") || said.contains("SSL")) {
            return new GridUnavailable(
                    "who listens at " + site.hosts() + " does not know these keys, or has none. Keys of"
                            + " one authority are needed on both sides.",
                    failure);
        }
        if (said.contains("bind") || said.contains("Address already in use")) {
            return new GridUnavailable("cannot listen: another program has the port, maybe another worker.", failure);
        }
        return nobody(site, failure);
    }

    static GridUnavailable nobody(GridSite site) {
        return nobody(site, null);
    }

    private static GridUnavailable nobody(GridSite site, Throwable failure) {
        return new GridUnavailable(
                "no worker answers at " + site.hosts() + ". Maybe start one there with 'evenrise worker --join'.",
                failure);
    }
}
