package rosinbook.web;

import io.javalin.config.JavalinConfig;
import org.eclipse.jetty.server.RequestLog;

/**
 * What stands around all routes, and around what never reaches one: request ids, HEAD, Jetty's own refusals, the log,
 * stopping.
 */
final class Frame {
    private Frame() {}

    static void around(JavalinConfig config, RequestLog log, Stopping stopping) {
        JettyProblems problems = new JettyProblems();
        config.jetty.modifyServer(server -> {
            stopping.watch(server);
            server.insertHandler(new HeadAsGet());
            server.insertHandler(new RequestIds());
            server.setErrorHandler(problems);
            server.setRequestLog(log);
        });
        config.jetty.modifyServletContextHandler(context -> context.setErrorHandler(problems));
        config.router.javaLangErrorHandler(Problems::answerError);
    }
}
