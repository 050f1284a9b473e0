using Foreshore.Guide.Support;
using Xunit;

[assembly: AssemblyFixture(typeof(TestCluster))]
