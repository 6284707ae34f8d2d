package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridWork;
import java.io.Serializable;
import java.util.Optional;
import java.util.UUID;
import org.apache.ignite.cluster.ClusterNode;
import org.apache.ignite.plugin.CachePluginContext;
import org.apache.ignite.plugin.CachePluginProvider;
import org.apache.ignite.plugin.ExtensionRegistry;
import org.apache.ignite.plugin.IgnitePlugin;
import org.apache.ignite.plugin.PluginConfiguration;
import org.apache.ignite.plugin.PluginContext;
import org.apache.ignite.plugin.PluginProvider;
import org.apache.ignite.plugin.PluginValidationException;

/** What we add to the engine: the work itself, and that whoever runs another software is refused, since it might find other plans. */
final class SameSoftware implements PluginProvider<PluginConfiguration> {
    /** Under which each says what it runs. */
    static final String ATTRIBUTE = "evenrise.software";

    static final String REFUSED = "another software: ";

    static final String NAME = "evenrise";

    private final String software;
    private final Work work;

    /** What a worker does with bytes, for the jobs that come to it; none at a driver. */
    record Work(Optional<GridWork> work) implements IgnitePlugin {}

    SameSoftware(String software, Optional<GridWork> work) {
        this.software = software;
        this.work = new Work(work);
    }

    @Override
    @SuppressWarnings("deprecation")
    public void validateNewNode(ClusterNode node) throws PluginValidationException {
        Object other = node.attribute(ATTRIBUTE);
        if (!software.equals(other)) {
            throw new PluginValidationException(
                    "refused " + node.addresses() + ", which runs " + other + " and not " + software,
                    REFUSED + "here runs " + other + ", there runs " + software,
                    node.id());
        }
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String version() {
        return software;
    }

    @Override
    public String copyright() {
        return "";
    }

    @Override
    @SuppressWarnings("unchecked")
    public <T extends IgnitePlugin> T plugin() {
        return (T) work;
    }

    @Override
    public void initExtensions(PluginContext context, ExtensionRegistry registry) {}

    @Override
    public <T> T createComponent(PluginContext context, Class<T> component) {
        return null;
    }

    @Override
    @SuppressWarnings("rawtypes")
    public CachePluginProvider createCacheProvider(CachePluginContext context) {
        return null;
    }

    @Override
    public void start(PluginContext context) {}

    @Override
    public void stop(boolean cancel) {}

    @Override
    public void onIgniteStart() {}

    @Override
    public void onIgniteStop(boolean cancel) {}

    @Override
    public Serializable provideDiscoveryData(UUID node) {
        return null;
    }

    @Override
    public void receiveDiscoveryData(UUID node, Serializable data) {}
}
